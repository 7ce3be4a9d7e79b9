package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.safety.HeatStretch.Anchor;

/**
 * The litres that a heating rate allows, against the balance of energy worked out by hand and
 * searched over the trays that may stand there. The heat capacity of water, 4180 J/(kg K), is a
 * handbook value; the shares by which trays differ are the design's own.
 */
class HeatStretchTest {

  /** 100 kJ, of which 5 kJ are dry losses, 4 kJ evaporate and 6 kJ stay in the plate; 10 K. */
  private static final HeatStretch WARM = new HeatStretch(100_000, 5000, 4000, 6000, 10);

  /** The same tray later and hotter: slower, and with more losses. */
  private static final HeatStretch LATER = new HeatStretch(120_000, 14_000, 16_000, 5500, 9);

  /** A bath that came cold from the tap: the room still warms it. */
  private static final HeatStretch COLD = new HeatStretch(100_000, -4000, 0, 6000, 10);

  private static final double[] DRY = {0.6, 1.1, 1.6};
  private static final double[] VAPOUR = {0.5, 1, 2};
  private static final double[] PLATE = {0.6, 1, 1.7};

  private static double elsewhere(HeatStretch s, double d, double e, double c) {
    return d * s.dryJ() + e * s.evaporationJ() + c * s.plateJ();
  }

  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void aFirstStretchIsWideBecauseThePowerIsUnknown() {
    LitreBounds seen = WARM.litres(null);
    assertEquals(85_000 / (4180 * 10.0), seen.bestL(), 1e-9);
    double least = 65_000 - 1.6 * 5000 - 2 * 4000 - 1.7 * 6000;
    assertEquals(least / (4180 * 10.12), seen.lowL(), 1e-9);
    double most = 125_000 - 0.6 * 5000 - 0.6 * 6000; // a cover may lie on it
    assertEquals(most / (4180 * 9.88), seen.highL(), 1e-9);
    LitreBounds cold = COLD.litres(null);
    assertEquals((65_000 + 0.6 * 4000 - 1.7 * 6000) / (4180 * 10.12), cold.lowL(), 1e-9);
    assertEquals((125_000 + 1.6 * 4000 - 0.6 * 6000) / (4180 * 9.88), cold.highL(), 1e-9);
  }

  @Test
  void noLitresAreBelowNone() {
    assertEquals(0, new HeatStretch(100, 5000, 4000, 6000, 10).litres(null).bestL());
    assertEquals(0, new HeatStretch(100, 5000, 4000, 6000, 10).litres(null).lowL());
  }

  @Test
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void theSameRateAgainIsTheSameLitres() {
    for (double said : new double[] {1.7, 2.0, 2.3}) {
      LitreBounds seen = WARM.litres(new Anchor(WARM, said));
      assertEquals(said, seen.bestL(), 1e-9);
      assertTrue(seen.lowL() < said && said < seen.highL(), seen.toString());
    }
  }

  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void halfTheHeatForTheSameRiseIsFarLessLiquid() {
    HeatStretch half = new HeatStretch(50_000, 2500, 2000, 6000, 10);
    LitreBounds seen = half.litres(new Anchor(WARM, 2));
    double power = (2 * 41_800 + 15_000) / 100_000.0;
    assertEquals((power * 50_000 - 10_500) / 41_800, seen.bestL(), 1e-9);
    assertTrue(seen.highL() < 1.3, seen.toString());
  }

  @Test
  void powerIsNeverTakenForMoreOrLessThanASupplyAndAPlateCanBe() {
    LitreBounds much = WARM.litres(new Anchor(WARM, 5));
    assertEquals((125_000 - 15_000) / 41_800.0, much.bestL(), 1e-9);
    LitreBounds little = WARM.litres(new Anchor(WARM, 0.5));
    assertEquals((65_000 - 15_000) / 41_800.0, little.bestL(), 1e-9);
  }

  /**
   * Every share of losses and plate, each covered or not at either time, with readings off by 0.12
   * K of rise and a supply that drifts by 5 %: the widest of them. The litres said are such that no
   * tray or every tray is beyond the ends of the power: between, the bounds bend off the corners.
   */
  @Test
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void comparedWithAnEarlierRateTheBoundsAreTheWidestOfAllTrays() {
    for (HeatStretch then : new HeatStretch[] {WARM, COLD, LATER}) {
      for (HeatStretch now : new HeatStretch[] {WARM, LATER, COLD}) {
        for (double said : new double[] {1.2, 2, 2.6}) {
          LitreBounds seen = now.litres(new Anchor(then, said));
          assertEquals(searched(then, now, said, false), seen.lowL(), 1e-9);
          assertEquals(searched(then, now, said, true), seen.highL(), 1e-9);
          assertTrue(seen.lowL() <= seen.bestL() && seen.bestL() <= seen.highL(), "ordered");
        }
      }
    }
  }

  private static double searched(HeatStretch then, HeatStretch now, double said, boolean most) {
    double end = most ? 0 : Double.POSITIVE_INFINITY;
    for (double d : DRY) {
      for (double e : VAPOUR) {
        for (double c : PLATE) {
          // A cover may have been laid on since, which gives the most, or taken off: the least.
          double eThen = most ? e : 0;
          double eNow = most ? 0 : e;
          double same =
              litres(now, power(then, said, elsewhere(then, d, e, c), most), d, e, c, most);
          double changed =
              litres(now, power(then, said, elsewhere(then, d, eThen, c), most), d, eNow, c, most);
          double here = most ? Math.max(same, changed) : Math.min(same, changed);
          end = most ? Math.max(end, here) : Math.min(end, here);
        }
      }
    }
    return end;
  }

  private static double litres(
      HeatStretch now, double power, double d, double e, double c, boolean most) {
    double left = power * now.heatJ() - elsewhere(now, d, e, c);
    return Math.max(0, left / (4180 * (now.bathK() + (most ? -0.12 : 0.12))));
  }

  private static double power(HeatStretch then, double said, double elsewhereJ, boolean most) {
    double doubtK = most ? 0.12 : -0.12;
    double plain = (said * 4180 * (then.bathK() + doubtK) + elsewhereJ) / then.heatJ();
    double power = Math.max(0.65, Math.min(1.25, plain));
    return most ? Math.min(1.25, power * 1.05) : Math.max(0.65, power * 0.95);
  }
}
