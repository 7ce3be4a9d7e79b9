package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** The watch over heat is asked for, because a tray unlike the declared one looks like a fault. */
class WatchHeatTest {

  private static final String OPEN_HEATER =
      """
      duration_s = 900
      [[at]]
      t_s = 0
      do = "start"
      [[fault]]
      t_s = 300
      kind = "heater-open"
      """;

  /** A small tray of which the controller is told litres and watts only. */
  private static final String SMALL =
      """
      duration_s = 900
      [tray]
      liquid_l = 0.1
      area_m2 = 0.01
      plate_j_per_k = 150
      heater_w = 150
      [[at]]
      t_s = 0
      do = "start"
      """;

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void whereItIsAskedForAnOpenHeaterTrips() throws ConfigRefused {
    assertEquals(List.of("HEAT_NOT_ARRIVING"), HeatRun.of(OPEN_HEATER).trips());
  }

  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void aTrayUnlikeTheBelievedOneHeatsWithoutIt() throws ConfigRefused {
    assertEquals(List.of(), HeatRun.of(SMALL).trips());
  }
}
