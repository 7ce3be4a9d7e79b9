package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.EventKind;

/** Lost air, stalls and lost power in whole sessions. */
class RehearsalFaultsTest {

  private static final String START = RehearsalTest.START;

  private static String at(double t, String what) {
    return "[[at]]\nt_s=%s\ndo='%s'\n".formatted(t, what);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "kind='fan-stops'",
        "kind='duct-blocked'",
        "kind='airflow-stuck-off'",
        "kind='fan-slows'\nrpm=700"
      })
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void heatIsOffWithinASecondOfLostAirWhichLocksOutAsAirLost(String fault) throws ConfigRefused {
    Played played = Played.of("duration_s=960\n" + START + "[[fault]]\nt_s=900\n" + fault + "\n");
    assertTrue(played.between(890, 899.9).stream().anyMatch(Played::heats));
    double lostS = played.first(900, r -> !r.airflowTrue());
    double signalS = played.first(900, r -> r.snapshot() != null && !r.snapshot().airflow());
    double from = Math.min(lostS, signalS);
    assertTrue(played.between(from + 1.0, 960).stream().noneMatch(Played::heats));
    assertEquals(List.of("AIR_LOST"), played.told(EventKind.TRIP));
    RehearsalRow last = played.rows.get(played.rows.size() - 1);
    assertEquals("LOCKOUT", last.state());
    assertTrue(last.snapshot() != null && last.snapshot().fanCommanded());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void afterLostAirHeatComesAgainOnlyByAcknowledgeResetStartProvingAndPurge() throws ConfigRefused {
    Played played =
        Played.of(
            "duration_s=1300\n"
                + START
                + "[[fault]]\nt_s=900\nkind='fan-stops'\nduration_s=60\n"
                + at(1000, "acknowledge")
                + at(1010, "reset")
                + at(1020, "start"));
    // Over a warm bath the fan ran and was proven before the start; the purge comes again whole.
    assertTrue(played.between(902, 1020 + 60).stream().noneMatch(Played::heats));
    assertTrue(played.between(1020 + 60, 1020 + 75).stream().anyMatch(Played::heats));
    List<String> states = played.told(EventKind.STATE);
    int lockout = states.indexOf("LOCKOUT");
    assertEquals(
        List.of("LOCKOUT", "OFF", "PROVING", "PURGING", "READY", "HEATING"),
        states.subList(lockout, lockout + 6));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void withoutAPersonNothingLeavesTheLockout() throws ConfigRefused {
    Played played =
        Played.of(
            "duration_s=1300\n"
                + START
                + "[[fault]]\nt_s=600\nkind='fan-stops'\nduration_s=60\n"
                + at(700, "start")
                + at(710, "reset"));
    assertTrue(played.between(700, 1300).stream().allMatch(r -> r.state().equals("LOCKOUT")));
    assertEquals(List.of("START", "RESET"), played.told(EventKind.REFUSED));
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aStallOfTwoSecondsDropsTheSafetyContactWithinOneAndTrips() throws ConfigRefused {
    Played played =
        Played.of(
            "duration_s=320\n" + START + "[[fault]]\nt_s=200\nkind='scan-stall'\nseconds=2\n");
    assertTrue(played.between(190, 199.9).stream().allMatch(RehearsalRow::safetyContact));
    assertTrue(played.between(200, 201.9).stream().allMatch(r -> r.state().equals("STALLED")));
    assertTrue(played.between(201, 320).stream().noneMatch(RehearsalRow::safetyContact));
    assertTrue(played.between(201, 320).stream().noneMatch(r -> r.heatW() > 0));
    assertEquals(List.of("SCAN_LATE"), played.told(EventKind.TRIP));
    assertEquals("LOCKOUT", played.between(202, 202).get(0).state());
  }

  @Test
  @Verifies(value = "SR-17", side = Side.ALLOWS)
  void aStallOfATenthOfASecondIsJitter() throws ConfigRefused {
    Played played =
        Played.of(
            "duration_s=320\n" + START + "[[fault]]\nt_s=200\nkind='scan-stall'\nseconds=0.1\n");
    assertTrue(played.between(200, 320).stream().allMatch(RehearsalRow::safetyContact));
    assertEquals(List.of(), played.told(EventKind.TRIP));
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void powerLostWhileHeatingComesBackToOffAndNeverHeatsWithoutAStart() throws ConfigRefused {
    Played played = Played.of("duration_s=1500\n" + START + Faults.toml("power-loss", 300));
    assertTrue(played.between(300, 359.9).stream().allMatch(r -> r.state().equals("NO_POWER")));
    assertTrue(played.between(300, 1500).stream().noneMatch(Played::heats));
    assertEquals(List.of("OFF", "OFF"), played.told(EventKind.POWER_UP));
    assertTrue(played.between(360, 1500).stream().allMatch(r -> r.state().equals("OFF")));
  }

  @Test
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void aStartAfterPowerCameBackHeatsAgain() throws ConfigRefused {
    Played played =
        Played.of("duration_s=600\n" + START + Faults.toml("power-loss", 300) + at(400, "start"));
    assertTrue(played.between(300, 460).stream().noneMatch(Played::heats));
    assertTrue(played.between(460, 490).stream().anyMatch(Played::heats));
  }

  @ParameterizedTest
  @ValueSource(doubles = {300, 310})
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aStartThatWasAskedForAsPowerFailedOrWithoutPowerIsLost(double startS) throws ConfigRefused {
    Played played =
        Played.of("duration_s=600\n" + at(startS, "start") + Faults.toml("power-loss", 300));
    assertTrue(played.rows.stream().noneMatch(Played::heats));
    assertFalse(played.told(EventKind.STATE).contains("PROVING"));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void powerLostInALockoutComesBackToTheLockout() throws ConfigRefused {
    Played played =
        Played.of(
            "duration_s=700\n"
                + START
                + Faults.toml("fan-stops", 300)
                + "[[fault]]\nt_s=400\nkind='power-loss'\nduration_s=30\n");
    assertEquals(List.of("OFF", "LOCKOUT"), played.told(EventKind.POWER_UP));
    assertTrue(played.between(430, 700).stream().allMatch(r -> r.state().equals("LOCKOUT")));
    RehearsalRow last = played.rows.get(played.rows.size() - 1);
    assertEquals(
        "AIR_LOST",
        last.snapshot() == null ? "" : last.snapshot().firstOut().map(Enum::name).orElse(""));
  }

  @Test
  void aProgramThatStalledAndLostPowerIsAwakeWhenPowerIsBack() throws ConfigRefused {
    String stall = "[[fault]]\nt_s=10\nkind='scan-stall'\nseconds=150\n";
    Played played = Played.of("duration_s=200\n" + stall + Faults.toml("power-loss", 20));
    assertTrue(played.between(80, 200).stream().allMatch(r -> r.state().equals("OFF")));
  }
}
