package trayward.host.app.goals;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import trayward.host.report.Turn;

/** The meter on baths whose course is known by construction. */
class GoalMeterTest {

  private static final double POUR_S = 5000;
  private static final Story STORY = new Story(POUR_S, 8000, "");

  /** Tells the rows of a bath and a relay that closes for the first {@code onS} of each 10 s. */
  private static Figures measured(GoalCase in, DoubleUnaryOperator bath, double onS) {
    GoalMeter meter = new GoalMeter(STORY);
    for (int k = 0; k <= 80_000; k++) {
      double t = k / 10.0;
      if (k == 1000) {
        meter.turn(new Turn(t, "heat", false, OptionalDouble.of(800)));
      } else if (k == 50_000) {
        meter.turn(new Turn(t, in.covers() ? "cover" : "pour", false, OptionalDouble.of(200)));
      } else if (k == 70_000) {
        meter.turn(new Turn(t, in.covers() ? "cover" : "sheet", false, OptionalDouble.of(50)));
      }
      meter.row(t, bath.applyAsDouble(t), 40, k % 100 < onS * 10);
    }
    return meter.figures(in);
  }

  /** Cold, then in the band from 1100 s, 300 s after the pour and 60 s after the sheet. */
  private static double steps(double t) {
    boolean cold = t < 1100 || (t >= POUR_S && t < 5300) || (t >= 7000 && t < 7060);
    return cold ? 39 : 40;
  }

  @Test
  void timesIntoTheBandAreToldAsMultiplesOfTheirBounds() {
    Figures got = measured(GoalCase.TWO_PROBES, GoalMeterTest::steps, 0);
    assertEquals(1000.0 / 800, got.get(Measure.HEAT_UP), 1e-9);
    assertEquals(300.0 / 200, got.get(Measure.POUR), 1e-9);
    assertEquals(60.0 / 50, got.get(Measure.SHEET), 1e-9);
  }

  @Test
  void aBathThatLeavesTheBandAgainHasArrivedWhenItIsBack() {
    Figures got = measured(GoalCase.TWO_PROBES, t -> t > 1990 && t < 2000 ? 40.3 : steps(t), 0);
    assertEquals(1900.0 / 800, got.get(Measure.HEAT_UP), 1e-9);
  }

  @Test
  void aBathOutsideTheBandAtTheNextDisturbanceNeverArrived() {
    DoubleUnaryOperator bath = t -> t > 4990 && t < POUR_S ? 40.3 : steps(t);
    Figures got = measured(GoalCase.TWO_PROBES, bath, 0);
    assertEquals(Double.POSITIVE_INFINITY, got.get(Measure.HEAT_UP));
    assertEquals(1.5, got.get(Measure.POUR), 1e-9);
  }

  @Test
  void overshootIsTheWarmUpsAlone() {
    DoubleUnaryOperator bath = t -> t == 1500 ? 40.12 : t == 6000 ? 41 : t < 50 ? 45 : steps(t);
    assertEquals(0.12, measured(GoalCase.TWO_PROBES, bath, 0).get(Measure.OVERSHOOT), 1e-9);
  }

  /** A sine has twice its amplitude from peak to peak; ten minutes hold ten whole waves. */
  @Test
  void rippleIsPeakToPeakOfTheLastTenMinutesBeforeThePour() {
    DoubleUnaryOperator bath =
        t -> 40 + (t < POUR_S - 600 ? 0.1 : 0.02) * Math.sin(2 * Math.PI * t / 60);
    assertEquals(0.04, measured(GoalCase.TWO_PROBES, bath, 0).get(Measure.RIPPLE), 1e-6);
  }

  @Test
  void theStandingErrorIsTheMeanOfTheHourBeforeThePourWithoutItsSign() {
    // Half of the hour 0.05 K below, half 0.01 K above: 0.02 K below on the mean.
    DoubleUnaryOperator bath = t -> t < POUR_S - 3600 ? 38 : t < POUR_S - 1800 ? 39.95 : 40.01;
    assertEquals(0.02, measured(GoalCase.TWO_PROBES, bath, 0).get(Measure.STANDING_ERROR), 1e-6);
  }

  /** A pulse each 10 s: 360 closings and 360 openings an hour. */
  @Test
  void theRelayIsCountedOverAnHour() {
    assertEquals(720, measured(GoalCase.TWO_PROBES, t -> 40, 4).get(Measure.RELAY));
    assertEquals(0, measured(GoalCase.TWO_PROBES, t -> 40, 0).get(Measure.RELAY));
    assertEquals(0, measured(GoalCase.TWO_PROBES, t -> 40, 10).get(Measure.RELAY));
  }

  @Test
  void theCoveredOvershootCountsFromTheFirstCoveringOn() {
    DoubleUnaryOperator bath = t -> t == 4000 ? 42 : t == 7500 ? 40.31 : 40;
    Figures got = measured(GoalCase.COVERED, bath, 0);
    assertEquals(0.31, got.get(Measure.COVERED), 1e-9);
    assertEquals(GoalCase.COVERED.measures().size(), got.values().size());
  }

  @Test
  void theWorseOfTwoCoveringsIsTheBound() {
    GoalMeter meter = new GoalMeter(STORY);
    meter.coveredBound(0.2);
    meter.coveredBound(0.3);
    meter.coveredBound(0.1);
    meter.trip();
    meter.look();
    meter.look();
    Figures got = meter.figures(GoalCase.COVERED);
    assertEquals(0.3, got.get(Measure.COVERED_BOUND));
    assertEquals(1, got.get(Measure.TRIPS));
    assertEquals(2, got.get(Measure.LOOKS));
  }
}
