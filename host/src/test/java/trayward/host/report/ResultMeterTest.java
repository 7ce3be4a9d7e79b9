package trayward.host.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What a rehearsal's result says, on courses whose figures are known by hand. */
class ResultMeterTest {

  private static TraceRow row(double t, double bathC, double setC) {
    return new TraceRow(
        t,
        bathC,
        bathC + 5,
        bathC,
        Double.NaN,
        bathC + 5,
        setC,
        0.4,
        true,
        true,
        true,
        true,
        250,
        true,
        1500,
        150,
        true,
        true,
        "HEATING",
        "",
        1,
        0,
        true);
  }

  private static void feed(
      ResultMeter meter, int fromTenths, int toTenths, DoubleUnaryOperator bath, double setC) {
    for (int k = fromTenths; k < toTenths; k++) {
      meter.row(row(k / 10.0, bath.applyAsDouble(k / 10.0), setC));
    }
  }

  @Test
  void heatUpIsTheTimeToEnterTheBandForGood() {
    ResultMeter meter = new ResultMeter(200);
    feed(meter, 0, 100, t -> 20, 40);
    meter.turn(new Turn(10, "heat", false, OptionalDouble.of(80)));
    // 0.2 K/s from 10 s: 39.8 °C after 99 s; up to 40.5, back into the band at 120 s, then rest.
    feed(meter, 100, 1125, t -> 20 + 0.2 * (t - 10), 40);
    feed(meter, 1125, 1200, t -> 40.5, 40);
    feed(meter, 1200, 2001, t -> 40.1, 40);
    assertEquals(110, meter.heatUpS().orElseThrow(), 1e-9);
    assertEquals(80, meter.timeOptimalS().orElseThrow());
    assertEquals(0.5, meter.overshootK().orElseThrow(), 1e-9);
    assertEquals(40.5, meter.maxBathC(), 1e-9);
    assertEquals(45.5, meter.maxPlateC(), 1e-9);
  }

  @Test
  void aBathThatLeavesTheBandAgainHasNoHeatUp() {
    ResultMeter meter = new ResultMeter(20);
    meter.turn(new Turn(0, "heat", false, OptionalDouble.empty()));
    feed(meter, 0, 100, t -> 40, 40);
    feed(meter, 100, 201, t -> 39.7, 40);
    assertTrue(meter.heatUpS().isEmpty());
    assertTrue(meter.timeOptimalS().isEmpty());
  }

  @Test
  void aDisturbanceEndsOneCourseAndBeginsTheNext() {
    ResultMeter meter = new ResultMeter(60);
    meter.turn(new Turn(0, "heat", false, OptionalDouble.of(5)));
    feed(meter, 0, 100, t -> 39, 40);
    feed(meter, 100, 200, t -> 40, 40);
    meter.turn(new Turn(20, "pour", false, OptionalDouble.of(10)));
    feed(meter, 200, 350, t -> 36, 40);
    feed(meter, 350, 601, t -> 40.15, 40);
    assertEquals(10, meter.heatUpS().orElseThrow(), 1e-9);
    ResultMeter.Recovery pour = meter.recoveries().get(0);
    assertEquals("pour", pour.word());
    assertEquals(15, pour.settleS().orElseThrow(), 1e-9);
    assertEquals(0.15, pour.overshootK().orElseThrow(), 1e-9);
  }

  @Test
  void timeAboveALoweredSetTemperatureIsNoOvershoot() {
    ResultMeter meter = new ResultMeter(60);
    meter.turn(new Turn(0, "heat", false, OptionalDouble.empty()));
    feed(meter, 0, 100, t -> 40.05, 40);
    meter.turn(new Turn(10, "set-temperature", true, OptionalDouble.empty()));
    feed(meter, 100, 400, t -> 40 - 0.2 * (t - 10), 35);
    feed(meter, 400, 601, t -> 35.1, 35);
    // The first row within the band of the new set is at most 0.2 K above it; rows are 0.02 K
    // apart.
    double overshoot = meter.overshootK().orElseThrow();
    assertTrue(overshoot <= 0.2 && overshoot > 0.17, () -> "overshoot " + overshoot);
  }

  @Test
  void rippleAndStandingErrorAreOfTheLastTenMinutes() {
    ResultMeter meter = new ResultMeter(1000);
    feed(meter, 0, 4000, t -> 20, 40);
    feed(meter, 4000, 10001, t -> t % 2 < 1 ? 40.03 : 39.99, 40);
    assertEquals(0.04, meter.ripplePpK(), 1e-9);
    assertEquals(0.01, meter.standingErrorK(), 1e-3);
  }

  @Test
  void decimalsAreFixedAndHaveNoLocale() {
    StringBuilder out = new StringBuilder();
    for (double value : new double[] {0, 1.006, -0.049, 39.06251, 1e6, -12.5}) {
      Decimals.append(out, value, 2);
      out.append(' ');
    }
    Decimals.append(out, Double.NaN, 2);
    assertEquals("0.00 1.01 -0.05 39.06 1000000.00 -12.50 ", out.toString());
  }
}
