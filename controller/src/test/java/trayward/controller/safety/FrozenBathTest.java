package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** A reading that stands still, in a bath that rests or in one that does not. */
class FrozenBathTest {

  /** Ten minutes of one bath reading under a plate that moves by {@code kelvinPerS}. */
  private static boolean found(double kelvinPerS, double bathC) {
    FrozenBath frozen = FrozenBath.START;
    for (int i = 0; i < 6000; i++) {
      frozen =
          frozen.next(
              new ThermalInput(
                  0.1,
                  false,
                  State.HOLDING,
                  new ThermalInput.Sample(bathC, i),
                  new ThermalInput.Sample(45 + kelvinPerS * 0.1 * i, i)),
              0,
              TrayModel.REFERENCE);
    }
    return frozen.found(TrayModel.REFERENCE, RoomModel.REFERENCE, 11.16);
  }

  /** E4: stuck on from hold at 250 W the bath rises 5 K in 264 s, and its plate with it. */
  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aReadingThatStandsStillUnderARisingPlateIsFrozen() {
    assertEquals(true, found(5.0 / 264, 40));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aReadingThatStandsStillUnderASteadyOrCoolingPlateIsNot() {
    assertEquals(false, found(0, 40));
    assertEquals(false, found(-0.01, 40));
  }

  /** A reading that stands still in a heated bath without a plate probe, moved by hand or not. */
  private static FrozenBath poked(int seconds, double thenC) {
    FrozenBath frozen = FrozenBath.START;
    for (int i = 0; i < 10 * seconds; i++) {
      boolean heat = !frozen.pokes() && i % 50 < 20; // duty 0.4: the hold of the reference tray
      double celsius = i < 10 * seconds - 10 ? 40 : thenC;
      frozen =
          frozen.next(
              new ThermalInput(
                  0.1,
                  heat,
                  State.HOLDING,
                  new ThermalInput.Sample(celsius, i),
                  ThermalInput.Sample.NONE),
              0,
              TrayModel.REFERENCE);
    }
    return frozen;
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aReadingThatStandsStillThroughAPauseOfHeatIsFrozen() {
    assertEquals(true, poked(620, 40).pokes());
    assertEquals(false, poked(620, 40).pokedInVain(TrayModel.REFERENCE));
    assertEquals(true, poked(1100, 40).pokedInVain(TrayModel.REFERENCE));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aReadingThatMovesEndsThePauseAtOnce() {
    assertEquals(false, poked(590, 40).pokes());
    assertEquals(false, poked(620, 39.9375).pokes());
  }

  private static final double BATH_MAX = TrayModel.LITRE_J_PER_K * (2 * 1.0 + 0.6);

  private static ConstantSpan span(double celsius, double ageS, double more) {
    Row sums = Row.of(64, 0).pushed(0).pushed(0);
    double[] all = sums.copy();
    all[2] = more;
    return new ConstantSpan(celsius, ageS, 0, 0, 0, 0, 0, 0, 1, Row.owning(all), 3, more);
  }

  private static boolean found(ConstantSpan span, double wPerK) {
    FrozenBath frozen = new FrozenBath(span, 0, 0, 0, 0);
    return frozen.found(TrayModel.REFERENCE, RoomModel.REFERENCE, wPerK);
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void moreHeatThanTheLargestBathHidesInTwoStepsIsFound() {
    double hidden = BATH_MAX * (1.0 / 6);
    assertEquals(true, found(span(40, 30, hidden + 1), Double.NaN));
    assertEquals(true, found(span(40, 30, hidden / 10 + 1), 10));
    assertEquals(true, found(span(20, 30, hidden + 1), 1), "a plate tells at any temperature");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void lessOrTooShortOrInAColdBathIsNot() {
    double hidden = BATH_MAX * (1.0 / 6);
    assertEquals(false, found(span(40, 30, hidden), Double.NaN));
    assertEquals(false, found(span(40, 30, hidden), 1));
    assertEquals(false, found(span(40, 29.9, hidden + 1), 1));
    assertEquals(false, found(span(23, 30, hidden + 1), Double.NaN));
    assertEquals(true, found(span(23.1, 30, hidden + 1), Double.NaN));
  }

  private static boolean kink(double slope, double ageS, double duty, double before, double calmS) {
    ConstantSpan span =
        new ConstantSpan(40, ageS, slope, before, 0, 0, 0, duty * ageS, 1, Row.of(64, 0), 1, 0);
    return new FrozenBath(span, 0, 0, 0, calmS).found(TrayModel.REFERENCE, RoomModel.REFERENCE, 18);
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aWarmUpThatStopsDeadUnderTheSameHeatIsFound() {
    assertEquals(true, kink(0.5, 40, 1, 1, 160));
    assertEquals(true, kink(0.03125, 96, 1, 1, 216), "3 K missed");
    assertEquals(true, kink(0.5, 40, 0.45, 0.5, 160));
    assertEquals(true, kink(0.5, 40, 0.3, 0.3, 160));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aRestOrAPourOrLessHeatIsNot() {
    assertEquals(false, kink(0.006, 1000, 1, 1, 2000));
    assertEquals(true, kink(0.0061, 1000, 1, 1, 2000));
    assertEquals(false, kink(0.5, 39.9, 1, 1, 160));
    assertEquals(false, kink(0.03125, 95.9, 1, 1, 216));
    assertEquals(false, kink(0.5, 40, 1, 1, 159.9));
    assertEquals(false, kink(0.5, 40, 0.29, 0.3, 160));
    assertEquals(false, kink(0.5, 40, 0.44, 0.5, 160));
  }

  private static FrozenBath after(
      FrozenBath before, State state, double celsius, double dt, double slope) {
    return before.next(
        new ThermalInput(
            dt, true, state, new ThermalInput.Sample(celsius, 1), ThermalInput.Sample.NONE),
        slope,
        TrayModel.REFERENCE);
  }

  private static FrozenBath aged(double celsius, double ageS, double dutyS) {
    ConstantSpan span =
        new ConstantSpan(celsius, ageS, 0, 0, 0, 0, 0, dutyS, 16, Row.of(64, 0), 60, 0);
    return new FrozenBath(span, 0, 0, 0, 0);
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void tenMinutesOfOneValueUnderHeatBeginAPauseAndFiveInAHotBath() {
    assertEquals(1, after(aged(44.9, 599, 300), State.HOLDING, 44.9, 1, 0).pokedS());
    assertEquals(301 / 600.0, after(aged(40, 599, 300), State.HOLDING, 40, 1, 0).pokeDuty(), 1e-9);
    assertEquals(1, after(aged(45, 299, 300), State.HOLDING, 45, 1, 0).pokedS());
    assertEquals(1, after(aged(40, 599, 29), State.HOLDING, 40, 1, 0).pokedS());
    FrozenBath on = after(aged(40, 599, 29), State.HOLDING, 40, 1, 0);
    ConstantSpan idle = aged(40, 9999, 0).span();
    FrozenBath later = after(new FrozenBath(idle, 0, 3, 0.5, 0), State.READY, 40, 1, 0);
    assertEquals(0.05, on.pokeDuty(), 1e-9);
    assertEquals(4, later.pokedS(), "the pause itself takes the duty away");
    assertEquals(0.5, later.pokeDuty());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void shorterOrColderOrUnheatedOnesDoNot() {
    assertEquals(0, after(aged(44.9, 598, 300), State.HOLDING, 44.9, 1, 0).pokedS());
    assertEquals(0, after(aged(45, 298, 300), State.HOLDING, 45, 1, 0).pokedS());
    assertEquals(0, after(aged(40, 599, 28.9), State.HOLDING, 40, 1, 0).pokedS());
    assertEquals(0, after(aged(40, 599, 300), State.AFTER_RUN, 40, 1, 0).pokedS());
    assertEquals(false, aged(40, 599, 300).pokes());
    assertEquals(false, aged(40, 599, 300).pokedInVain(TrayModel.REFERENCE));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void thePauseIsInVainOnceALargeBathWouldHaveCooled() {
    double needed = 300 + BATH_MAX * 0.15 / (0.65 * 250 * 0.5);
    ConstantSpan span = aged(40, 900, 0).span();
    FrozenBath enough = new FrozenBath(span, 0, needed, 0.5, 0);
    assertEquals(true, enough.pokedInVain(TrayModel.REFERENCE));
    FrozenBath less = new FrozenBath(span, 0, needed - 0.1, 0.5, 0);
    assertEquals(false, less.pokedInVain(TrayModel.REFERENCE));
  }

  @Test
  void theTimeSinceAPourIsKept() {
    double poured = 1.5 * (250 / (TrayModel.LITRE_J_PER_K * 1.0));
    assertEquals(2, after(FrozenBath.START, State.HOLDING, 40, 2, poured).calmS());
    assertEquals(0, after(FrozenBath.START, State.HOLDING, 40, 2, poured + 1e-6).calmS());
    assertEquals(0, after(FrozenBath.START, State.HOLDING, 40, 2, -poured - 1e-6).calmS());
    FrozenBath poking = after(aged(40, 599, 300), State.HOLDING, 40, 1, 0);
    assertEquals(1, poking.calmS());
  }

  @Test
  void whatGivesHeatIsLagged() {
    FrozenBath blind = after(FrozenBath.START, State.HOLDING, 40, 2, 0);
    assertEquals(0.65 * 250 * (1 - Math.exp(-2 / 170.0)), blind.given(), 1e-9);
    FrozenBath off =
        blind.next(
            new ThermalInput(
                3, false, State.HOLDING, new ThermalInput.Sample(40, 1), ThermalInput.Sample.NONE),
            0,
            TrayModel.REFERENCE);
    assertEquals(blind.given() * Math.exp(-3 / 170.0), off.given(), 1e-9);
    assertEquals(3 * off.given(), off.span().sum(), 1e-9);
    FrozenBath seen = withPlate(FrozenBath.START, 50);
    assertEquals(50, seen.given());
    assertEquals(50 + 10 * (1 - Math.exp(-0.2)), withPlate(seen, 60).given(), 1e-9);
  }

  private static FrozenBath withPlate(FrozenBath before, double plateC) {
    return before.next(
        new ThermalInput(
            2,
            true,
            State.HOLDING,
            new ThermalInput.Sample(40, 1),
            new ThermalInput.Sample(plateC, 1)),
        0,
        TrayModel.REFERENCE);
  }

  private static final TrayModel TWO_LITRES = new TrayModel(2, 0.072, 1100, 18, 2.5, 0.5, 250, 1);

  @Test
  void twiceTheLiquidHidesAndNeedsMoreHeat() {
    double hidden = TrayModel.LITRE_J_PER_K * 4.6 / 6;
    FrozenBath less = new FrozenBath(span(40, 30, hidden - 1), 0, 0, 0, 0);
    FrozenBath more = new FrozenBath(span(40, 30, hidden + 1), 0, 0, 0, 0);
    assertEquals(false, less.found(TWO_LITRES, RoomModel.REFERENCE, 1));
    assertEquals(true, more.found(TWO_LITRES, RoomModel.REFERENCE, 1));
    ThermalInput in =
        new ThermalInput(
            2, true, State.HOLDING, new ThermalInput.Sample(40, 1), ThermalInput.Sample.NONE);
    assertEquals(2, FrozenBath.START.next(in, 0.049, TWO_LITRES).calmS());
    assertEquals(0, FrozenBath.START.next(in, 0.051, TWO_LITRES).calmS());
    TrayModel half = new TrayModel(0.5, 0.072, 1100, 18, 2.5, 0.5, 250, 1);
    assertEquals(2, FrozenBath.START.next(in, 0.17, half).calmS(), "1.5 of 0.12 K/s");
    assertEquals(0, FrozenBath.START.next(in, 0.19, half).calmS());
  }

  @Test
  void aReadingStandsFromHalfAMinute() {
    assertEquals(true, aged(40, 30, 0).stands());
    assertEquals(false, aged(40, 29.9, 0).stands());
  }
}
