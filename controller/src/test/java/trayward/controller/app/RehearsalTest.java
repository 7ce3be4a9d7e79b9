package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.EventKind;
import trayward.controller.scan.Snapshot;

/** Whole sessions against the simulated tray. */
class RehearsalTest {

  static final String START = "[[at]]\nt_s=0\ndo='start'\n";
  static final List<String> KINDS = Faults.KINDS;

  @Test
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  void theDefaultTrayReachesFortyDegreesAndHoldsThemWithoutATrip() throws ConfigRefused {
    Played played = Played.of(START);
    assertEquals(36_001, played.rows.size());
    assertEquals(List.of(), played.told(EventKind.TRIP));
    double max = played.rows.stream().mapToDouble(RehearsalRow::bathTrueC).max().orElseThrow();
    assertTrue(max < 40.5, "overshoot to " + max);
    var last = played.between(3000, 3600).stream().mapToDouble(RehearsalRow::bathTrueC);
    var held = last.summaryStatistics();
    assertTrue(held.getMax() - held.getMin() < 0.1, held.toString());
    assertEquals(40, held.getAverage(), 0.2);
    assertEquals(
        List.of("PROVING", "PURGING", "READY", "HEATING", "HOLDING"),
        played.told(EventKind.STATE).subList(0, 5));
  }

  @Test
  void theSameFileAndSeedGiveIdenticalRowsAndAnotherSeedDoesNot() throws ConfigRefused {
    String toml = "duration_s=900\nseed=%d\n" + START + Faults.toml("fan-slows", 500);
    Played one = Played.of(toml.formatted(5));
    Played two = Played.of(toml.formatted(5));
    assertEquals(one.rows, two.rows);
    assertEquals(one.events, two.events);
    assertNotEquals(one.rows, Played.of(toml.formatted(6)).rows);
  }

  @ParameterizedTest
  @FieldSource("KINDS")
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  void everyFaultOfTheContractRunsToTheEndAndHeatsOnlyInProvenAir(String kind)
      throws ConfigRefused {
    Played played =
        Played.of(
            "duration_s=1200\n[second_bath_probe]\npresent=true\n"
                + START
                + Faults.toml(kind, 400));
    assertEquals(12_001, played.rows.size());
    double heatAt = played.first(0, Played::heats);
    assertTrue(heatAt < 100, "the fault came before any heat");
    assertEquals(Faults.lasts(kind) ? 2 : 1, played.told(EventKind.FAULT).size());
    for (RehearsalRow row : played.rows) {
      Snapshot scan = row.snapshot();
      if (scan != null && scan.state().name().equals(row.state()) && heat(scan)) {
        assertTrue(scan.airflow(), "heat at " + row.tS() + " s without airflow");
        assertTrue(row.state().equals("HEATING") || row.state().equals("HOLDING"), row.state());
      }
    }
  }

  /** The contact test closes each relay alone: heat needs both. */
  private static boolean heat(Snapshot scan) {
    return scan.heaterOn() && scan.safetyRelay();
  }

  @Test
  void aRefusedCommandIsAnEventAndNotAFailure() throws ConfigRefused {
    Played played =
        Played.of(
            "duration_s=20\n"
                + START
                + "[[at]]\nt_s=3\ndo='start'\n[[at]]\nt_s=4\ndo='reset'\n"
                + "[[at]]\nt_s=5\ndo='set-temperature'\ncelsius=60\n");
    assertEquals(List.of("START", "RESET", "set-temperature"), played.told(EventKind.REFUSED));
  }

  @Test
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void anUnattendedTrayIsWithoutHeatAfterFortyFiveMinutes() throws ConfigRefused {
    Played played = Played.of("duration_s=3000\n[control]\nattended=false\n" + START);
    assertTrue(played.between(2600, 2699).stream().anyMatch(Played::heats));
    assertTrue(played.between(2700.2, 3000).stream().noneMatch(Played::heats));
    assertEquals(List.of(), played.told(EventKind.TRIP));
    assertEquals(1, played.told(EventKind.PRESENCE_SOON).size());
  }

  @Test
  @Verifies(value = "SR-15", side = Side.ALLOWS)
  void aMarkRenewsPresence() throws ConfigRefused {
    Played played =
        Played.of(
            "duration_s=3000\n[control]\nattended=false\n"
                + START
                + "[[at]]\nt_s=2000\ndo='mark'\nkind='in'\n");
    assertTrue(played.between(2800, 3000).stream().anyMatch(Played::heats));
  }

  @Test
  @Verifies(value = "SR-16", side = Side.WITHHOLDS)
  void aRequiredHostThatIsLostWithholdsHeatAfterSixtySecondsUntilANewStart() throws ConfigRefused {
    String lost = "[[fault]]\nt_s=300\nkind='host-lost'\nduration_s=200\n";
    String again = "[[at]]\nt_s=600\ndo='start'\n";
    Played played =
        Played.of("duration_s=1000\n[control]\nhost_required=true\n" + START + lost + again);
    assertTrue(played.between(350, 359).stream().anyMatch(Played::heats));
    assertTrue(played.between(360.1, 660).stream().noneMatch(Played::heats));
    assertTrue(played.between(660, 1000).stream().anyMatch(Played::heats));
    assertEquals(List.of(), played.told(EventKind.TRIP));
  }

  @Test
  @Verifies(value = "SR-16", side = Side.ALLOWS)
  void aHostThatIsNotRequiredMayBeLost() throws ConfigRefused {
    Played played = Played.of("duration_s=500\n" + START + Faults.toml("host-lost", 300));
    assertTrue(played.between(361, 500).stream().anyMatch(Played::heats));
  }

  @Test
  @Verifies(value = "SR-22", side = Side.ALLOWS)
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void aRehearsalIsNeverOverdueAndStepsOfItsWallClockChangeNoRow() throws ConfigRefused {
    String years = "[[fault]]\nt_s=%d\nkind='wall-clock-step'\nseconds=%d\n";
    String steps = years.formatted(1, 300_000_000) + years.formatted(200, -600_000_000);
    Played still = Played.of("duration_s=400\n" + START);
    Played jumps = Played.of("duration_s=400\n" + steps + START);
    assertEquals(still.rows, jumps.rows);
    assertTrue(jumps.rows.stream().anyMatch(Played::heats));
  }
}
