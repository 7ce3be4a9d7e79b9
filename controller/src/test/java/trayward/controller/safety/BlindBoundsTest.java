package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** When a look at the bath begins, at each of its bounds and in a single scan. */
class BlindBoundsTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;
  private static final RoomModel ROOM = RoomModel.REFERENCE;

  /** Blocks of 5 s as means of a line that bends once, {@code bentAt} blocks ago. */
  private record Bath(double nowC, double slope, double slopeBefore, int blocks, double bentAt) {

    /** With a bend, if any, a minute ago. */
    Bath(double nowC, double slope, double slopeBefore, int blocks) {
      this(nowC, slope, slopeBefore, blocks, 11.5);
    }

    double at(int back) {
      return nowC
          - 5 * slope * Math.min(back, bentAt)
          - 5 * slopeBefore * Math.max(0, back - bentAt);
    }

    /** All but the newest, which is full but for its last moment. */
    Blocks before() {
      Row means = Row.of(Blocks.KEPT, Double.NaN);
      for (int i = blocks - 1; i > 0; i--) {
        means = means.pushed(at(i));
      }
      return new Blocks(5, 5 * at(0), means, blocks - 1);
    }
  }

  private static Blocks passed(double share, int blocks) {
    return new Blocks(5, 5 * share, Row.of(Blocks.KEPT, share), blocks - 1);
  }

  /** A scan of no length, which closes the newest block. */
  private static BlindLook scan(Bath bath, double share, double needed, TrayModel tray) {
    return from(bath, share, needed, 0, Double.NEGATIVE_INFINITY, tray);
  }

  private static BlindLook from(
      Bath bath, double share, double needed, double restS, double sound, TrayModel tray) {
    HeatMissed heat =
        new HeatMissed(passed(share, bath.blocks()), passed(share, bath.blocks()), share, share);
    BlindLook before = new BlindLook(bath.before(), heat, needed, null, restS, sound, false, false);
    ThermalInput.Sample read = new ThermalInput.Sample(bath.nowC(), 1);
    return before.next(
        new ThermalInput(0, true, State.HEATING, read, ThermalInput.Sample.NONE), true, tray, ROOM);
  }

  private static boolean looks(Bath bath, double share, double needed) {
    return scan(bath, share, needed, TRAY).looking();
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aMinuteOfNearlyFullHeatIsEnough() {
    assertTrue(looks(new Bath(40, 0, 0, 12), 0.85, 1));
    assertFalse(looks(new Bath(40, 0, 0, 11), 0.85, 1));
    assertFalse(looks(new Bath(40, 0, 0, 12), 0.849, 1));
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void twoMinutesOfAFallUnderMoreHeatThanOfLateAreEnough() {
    assertTrue(looks(new Bath(40, -0.002, -0.002, 24), 0.12 + 0.25, 0.25));
    assertFalse(looks(new Bath(40, -0.002, -0.002, 24), 0.12 + 0.249, 0.25));
    assertFalse(looks(new Bath(40, -0.002, -0.002, 23), 0.5, 0.25));
    assertFalse(looks(new Bath(40, -0.0007, -0.0018, 24), 0.5, 0.25), "it falls no more");
    assertFalse(looks(new Bath(40, -0.002, 0.002, 24), 0.5, 0.25), "not over two minutes");
  }

  @Test
  void theCourseIsTakenOverTwoMinutesWhereTheyAreOneLine() {
    BathLook line = scan(new Bath(40, 0, -0.0009, 24), 1, 1, TRAY).look();
    assertNotNull(line);
    assertEquals(new Bath(40, 0, -0.0009, 24).before().next(40, 0).slope(0, 24), line.slope());
    assertTrue(line.slope() < -0.0003, "the older minute counts");
    for (double before : new double[] {-0.0011, 0.0011}) {
      BathLook minute = scan(new Bath(40, 0, before, 24), 1, 1, TRAY).look();
      assertNotNull(minute);
      assertEquals(0, minute.slope(), 1e-9, "the newest minute alone");
    }
    // Both fall nearly alike: their difference counts, not their sum.
    BathLook fall = scan(new Bath(40, -0.001, -0.0017, 24), 1, 1, TRAY).look();
    assertNotNull(fall);
    assertTrue(fall.slope() < -0.0012, "both minutes");
  }

  @Test
  void halvesOfAMinuteThatBendByMoreThanNoiseAreNoCourse() {
    for (int side : new int[] {-1, 1}) {
      assertTrue(scan(new Bath(40, -0.006, -0.006 + side * 0.0039, 12, 5.5), 1, 1, TRAY).looking());
      assertFalse(
          scan(new Bath(40, -0.006, -0.006 + side * 0.0041, 12, 5.5), 1, 1, TRAY).looking());
    }
  }

  /** Twice the believed loss into four fifths of the liquid, and 0.004 K/s. */
  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void aBathThatFallsFasterThanAnyLossWasPouredInto() {
    for (double litres : new double[] {1, 2}) {
      TrayModel tray = new TrayModel(litres, 0.072, 1100, 18, 2.5, 0.5, 4000, 1);
      double[] fall = {0, 0};
      for (int k = 0; k < 2; k++) {
        double by = k == 0 ? 0.00399 : 0.00401;
        double slope = -by;
        for (int i = 0; i < 20; i++) { // the loss is that of the minute's mean
          double meanC = 40 - slope * 27.5;
          slope = -2 * tray.bathLossW(meanC, ROOM) / (0.8 * 4180 * litres) - by;
        }
        fall[k] = slope;
      }
      assertTrue(scan(new Bath(40, fall[0], fall[0], 12), 1, 1, tray).looking());
      assertFalse(scan(new Bath(40, fall[1], fall[1], 12), 1, 1, tray).looking());
    }
  }

  @Test
  void aLookRestsForItsTimeUnlessTheBathFallsFasterThanBefore() {
    Bath rest = new Bath(40, 0, 0, 12);
    assertFalse(from(rest, 1, 1, 1, 0, TRAY).looking());
    assertTrue(from(rest, 1, 1, 0, 0, TRAY).looking(), "the rest is over");
    assertFalse(from(rest, 1, 1, 1, 0.0029, TRAY).looking());
    assertTrue(from(rest, 1, 1, 1, 0.0031, TRAY).looking());
    assertTrue(from(rest, 1, 1, 1, 0.003, TRAY).looking(), "by just so much");
  }
}
