package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The plates that may be. */
class PlateGridTest {

  private static int at(int t, int g) {
    return t * PlateGrid.LIFTS + g;
  }

  @Test
  void theGridSpansTimeConstantsAndLiftsInEqualShares() {
    assertEquals(7, PlateGrid.timeS(0), 1e-9);
    assertEquals(190, PlateGrid.timeS(PlateGrid.TIMES - 1), 1e-9);
    assertEquals(Math.sqrt(7.0 * 190), Math.sqrt(PlateGrid.timeS(7) * PlateGrid.timeS(8)), 1e-9);
    assertEquals(0.65 / 45, PlateGrid.kelvinPerW(0), 1e-9);
    assertEquals(1.25 / 4, PlateGrid.kelvinPerW(PlateGrid.LIFTS - 1), 1e-9);
    double middle = Math.sqrt(0.65 / 45 * 1.25 / 4);
    assertEquals(middle, PlateGrid.kelvinPerW(PlateGrid.LIFTS / 2), 1e-9);
  }

  /** Each tray of 100 to 1900 J/K and 4 to 45 W/K with full, weak or strong power is among them. */
  @Test
  void everyTrayHasANeighbourThatIsPossible() {
    for (double jPerK : new double[] {100, 150, 400, 700, 1100, 1900}) {
      for (double wPerK : new double[] {4, 8, 12, 18, 25, 45}) {
        double timeS = jPerK / wPerK;
        for (double power :
            timeS < 7 || timeS > 190 ? new double[0] : new double[] {0.65, 1, 1.25}) {
          int t = (int) Math.round(15 * Math.log(timeS / 7) / Math.log(190 / 7.0));
          double share = Math.log(power / wPerK * 45 / 0.65) / Math.log(1.25 / 4 * 45 / 0.65);
          assertTrue(PlateGrid.possible(at(t, (int) Math.round(40 * share))), jPerK + " " + wPerK);
        }
      }
    }
  }

  /** Counted by brute force over powers: some power must give a coupling and a capacity within. */
  @Test
  void whatNoPowerExplainsIsLeftOut() {
    int possible = 0;
    for (int i = 0; i < PlateGrid.SIZE; i++) {
      double k = PlateGrid.kelvinPerW(i % PlateGrid.LIFTS);
      double timeS = PlateGrid.timeS(i / PlateGrid.LIFTS);
      boolean some = false;
      for (int p = 0; p <= 6000; p++) {
        double wPerK = (0.65 + p * 0.0001) / k;
        double jPerK = wPerK * timeS;
        some |= wPerK >= 4 - 1e-9 && wPerK <= 45 + 1e-9 && jPerK >= 90 && jPerK <= 2000;
      }
      assertEquals(some, PlateGrid.possible(i), timeS + " s, " + k + " K/W");
      possible += some ? 1 : 0;
    }
    assertTrue(possible > 400 && possible < PlateGrid.SIZE, possible + " candidates");
  }
}
