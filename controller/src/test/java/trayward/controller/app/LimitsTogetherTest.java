package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.safety.Limits;

/** Limits that lean on each other, and the order of a scenario's file. */
class LimitsTogetherTest {

  private static Scenario of(String toml) throws ConfigRefused {
    return Scenario.parse("s.toml", toml);
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void limitsThatLeaveNoSetTemperatureAreRefusedInOneLine() {
    assertEquals(
        "s.toml: limits.set_min_c: found 30, accepted is at most set_max_c, and 2 K under"
            + " bath_hard_c",
        Refused.line(() -> of("[limits]\nset_min_c = 30\nset_max_c = 20\n")));
  }

  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void aLowHardLimitLowersWhatMayBeSet() {
    assertEquals(
        "s.toml: control.set_c: found 40, accepted is 15 to 38 °C",
        Refused.line(() -> of("[limits]\nbath_hard_c = 40\n[control]\nset_c = 40\n")));
  }

  @Test
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void theDefaultsAcceptFifteenToFiftyDegrees() {
    assertEquals("15 to 50 °C", Limits.STANDARD.setRange().words());
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void theRegulatorsCeilingStaysUnderALoweredDryTrayTrip() throws ConfigRefused {
    assertEquals(68, Limits.STANDARD.plateCeilingC());
    assertEquals(46, of("[limits]\nplate_dry_c = 50\n").limits().plateCeilingC());
  }

  @Test
  void equalTimesActInTheOrderOfTheFileWhateverTheirTable() throws ConfigRefused {
    List<ScenarioEntry> entries =
        of("""
                [[fault]]
                t_s = 5
                kind = "fan-stops"
                [[at]]
                t_s = 5
                do = "start"
                [[ fault ]]
                t_s = 5
                kind = "tray-dry"
                [[at]]
                t_s = 1
                do = "presence"
                """)
            .entries();
    assertEquals(
        List.of("presence", "fan-stops", "start", "tray-dry"),
        entries.stream().map(ScenarioEntry::word).toList());
  }

  @Test
  void tablesWrittenInlineAreReadToo() throws ConfigRefused {
    List<ScenarioEntry> entries = of("at = [{t_s = 3, do = \"stop\"}]\n").entries();
    assertTrue(entries.size() == 1, entries.toString());
    assertInstanceOf(ScenarioEntry.Ask.class, entries.get(0));
  }
}
