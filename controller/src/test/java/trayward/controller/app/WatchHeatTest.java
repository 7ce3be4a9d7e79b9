package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** The watch over heat is on without being asked for, also where a tray is hardly declared. */
class WatchHeatTest {

  private static final String START =
      """
      [[at]]
      t_s = 0
      do = "start"
      """;

  /** A small tray of which the controller is told litres and watts only. */
  private static final String SMALL =
      """
      duration_s = 1800
      [tray]
      liquid_l = 0.1
      area_m2 = 0.01
      plate_j_per_k = 150
      heater_w = 150
      """
          + START;

  private static String fault(String kind, int atS) {
    return "[[fault]]\nt_s = " + atS + "\nkind = \"" + kind + "\"\n";
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void anOpenHeaterTripsWithoutAnySetting() throws ConfigRefused {
    HeatRun run = HeatRun.of("duration_s = 900\n" + START + fault("heater-open", 300));
    assertEquals(List.of("HEAT_NOT_ARRIVING"), run.trips());
  }

  @Test
  @Verifies(value = "SR-07", side = Side.ALLOWS)
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void aTrayUnlikeTheBelievedOneHeats() throws ConfigRefused {
    HeatRun run = HeatRun.of(SMALL);
    assertEquals(List.of(), run.trips());
    assertTrue(run.maxBathC() > 39, "bath " + run.maxBathC());
  }

  @ParameterizedTest
  @ValueSource(ints = {80, 300, 900})
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void andItsOpenHeaterIsNamedToo(int atS) throws ConfigRefused {
    HeatRun run = HeatRun.of(SMALL + fault("heater-open", atS));
    assertEquals(List.of("HEAT_NOT_ARRIVING"), run.trips());
  }

  @ParameterizedTest
  @ValueSource(ints = {80, 300, 900})
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void andItsWeldedContactIsNamedToo(int atS) throws ConfigRefused {
    HeatRun run = HeatRun.of(SMALL + fault("relay-welded", atS));
    assertEquals(List.of("RELAY_STUCK"), run.trips());
    assertTrue(run.maxPlateC() <= 78 && run.maxBathC() <= 56, "plate " + run.maxPlateC());
  }
}
