package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.TrayModel;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.ProbeParameters;
import trayward.controller.sim.SimFault;

/** SR-19 for scenarios: defaults as the contract has them, entries in order, refusals. */
class ScenarioTest {

  private static Scenario of(String toml) throws ConfigRefused {
    return Scenario.parse("s.toml", toml);
  }

  private static String refused(String toml) {
    return Refused.line(() -> of(toml));
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void theDefaultsAreThoseOfTheContract() throws ConfigRefused {
    Scenario s = of("");
    assertEquals(1, s.seed());
    assertEquals(3600, s.durationS());
    assertEquals(
        new PlantParameters(
            1.0, 0.072, 1100, 18, 2.5, 0.5, 250, 20, false, 1.0, 0, 6, 20, 0.5, 0.15, 150, 1500, 3,
            4),
        s.plant());
    assertEquals(new ProbeParameters(true, 5, 0.02, 0), s.bathProbe());
    assertFalse(s.secondProbe().present());
    assertEquals(new ProbeParameters(true, 3, 0.02, 0), s.plateProbe());
    assertEquals(new ControlTable(40, "auto", 5, 0.5, true, false), s.control());
    assertEquals(List.of(), s.entries());
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void withoutAModelOnlyWattsAndLitresAreBelievedAsDeclared() throws ConfigRefused {
    TrayModel believed = of("[tray]\nheater_w=400\nliquid_l=2\nplate_j_per_k=2000\n").model();
    assertEquals(new TrayModel(2, 0.072, 1100, 18, 2.5, 0.5, 400, 1.0), believed);
    assertEquals(350, of("[tray]\nheater_w=400\n[model]\nheater_w=350\n").model().heaterW());
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void entriesStandInAnyOrderAndEqualTimesActInFileOrder() throws ConfigRefused {
    Scenario s =
        of(
            """
            [[at]]
            t_s = 900
            do = "stop"
            [[at]]
            t_s = 5
            do = "set-temperature"
            celsius = 38
            [[at]]
            t_s = 5
            do = "start"
            [[fault]]
            t_s = 7
            kind = "fan-slows"
            rpm = 900
            duration_s = 2
            """);
    assertEquals(
        List.of("set-temperature", "start", "fan-slows", "fan-slows", "stop"),
        s.entries().stream().map(ScenarioEntry::word).toList());
    assertEquals(
        List.of(
            new ScenarioEntry.TrayFault(7, SimFault.FAN_SLOWS, true, 900),
            new ScenarioEntry.TrayFault(9, SimFault.FAN_SLOWS, false, 900)),
        s.entries().subList(2, 4));
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void pourAndSheetHaveTheDefaultsOfTheContract() throws ConfigRefused {
    Scenario s = of("[[at]]\nt_s=1\ndo='pour'\nlitres=0.3\n[[at]]\nt_s=2\ndo='sheet'\n");
    assertEquals(
        List.of(new ScenarioEntry.Pour(1, 0.3, 20, true), new ScenarioEntry.Sheet(2, 210, 15)),
        s.entries());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "seed='x'                                        | seed         | 'x'",
        "seed=-1                                         | seed         | -1",
        "name=4                                          | name         | 4",
        "duration_s=0                                    | duration_s   | 0",
        "at=5                                            | at           | 5",
        "at=[1]                                          | at           | 1",
        "[[at]]~do='start'                               | 1.t_s        | nothing",
        "[[at]]~t_s=1                                    | 1.do         | nothing",
        "[[at]]~t_s=3601~do='start'                      | 1.t_s        | 3601",
        "[[at]]~t_s=-1~do='start'                        | 1.t_s        | -1",
        "[[at]]~t_s=1~do='begin'                         | 1.do         | 'begin'",
        "[[at]]~t_s=1~do='set-temperature'               | 1.celsius    | nothing",
        "[[at]]~t_s=1~do='mark'~kind='out'               | 1.kind       | 'out'",
        "[[at]]~t_s=1~do='pour'~litres=0                 | 1.litres     | 0",
        "[[fault]]~t_s=1~kind='fan-dies'                 | 1.kind       | 'fan-dies'",
        "[[fault]]~t_s=1~kind='fan-slows'                | 1.rpm        | nothing",
        "[[fault]]~t_s=1~kind='probe-offset'             | 1.kelvin     | nothing",
        "[[fault]]~t_s=1~kind='scan-stall'               | 1.seconds    | nothing",
        "[[fault]]~t_s=1~kind='wall-clock-step'          | 1.seconds    | nothing",
        "[[fault]]~t_s=1~kind='power-loss'               | 1.duration_s | nothing",
        "[[fault]]~t_s=1~kind='fan-stops'~duration_s=0   | 1.duration_s | 0"
      })
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aWrongEntryIsRefusedByItsNumberAndKey(String toml, String key, String found) {
    Refused.names(refused(toml.replace('~', '\n')), "s.toml: ", key + ": found " + found, "accept");
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aStrongHeaterWithoutAPlateProbeIsRefused() {
    Refused.names(
        refused("[plate_probe]\npresent=false\n[tray]\nheater_w=400\n"),
        "tray.heater_w: found 400",
        "250 W");
  }

  @Test
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void withoutAnAirflowSwitchThereIsNoProofOfAirMovement() {
    Refused.names(refused("[fan]\nairflow_switch=false\n"), "fan.airflow_switch: found false");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void everyFaultOfTheContractIsKnownByItsName() throws ConfigRefused {
    for (String kind : Faults.KINDS) {
      assertFalse(of(Faults.toml(kind, 10)).entries().isEmpty(), kind);
    }
    assertTrue(Faults.KINDS.size() == 38);
  }
}
