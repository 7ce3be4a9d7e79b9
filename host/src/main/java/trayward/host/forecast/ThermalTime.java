package trayward.host.forecast;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * How far a print has come: the integral of dt / tau(T(t)), 1 where emergence is expected.
 * Immutable; a step returns the next.
 *
 * <p>Between two valid readings the pace 1/tau is taken as straight (trapezoid); after the last one
 * its temperature is held.
 *
 * @param elapsedS seconds since in
 * @param progress progress up to the last valid reading
 * @param validS when that was, seconds since in
 * @param validC its temperature, °C; empty before the first
 * @param lost whether a gap was too long to bridge, or from in to the first too long to be held
 */
public record ThermalTime(
    double elapsedS, double progress, double validS, OptionalDouble validC, boolean lost) {

  /**
   * Longest time for which the last valid temperature stands for the present one, seconds: a bath
   * moves 1.5 K meanwhile at most, which puts the progress wrong by some 2 s.
   */
  public static final double HELD_MAX_S = 30;

  /**
   * Longest gap that two valid readings bridge, seconds. A bath between them strays from a straight
   * line by about 1 K at most, 5 s of progress; a top-up meanwhile would be more.
   */
  public static final double BRIDGED_MAX_S = 120;

  /** At in. */
  public static ThermalTime begun(OptionalDouble bathC) {
    return new ThermalTime(0, 0, 0, believable(bathC), false);
  }

  private static OptionalDouble believable(OptionalDouble bathC) {
    return bathC.isPresent() && Arrhenius.bath(bathC.getAsDouble())
        ? bathC
        : OptionalDouble.empty();
  }

  /**
   * One reading later. A time that is no number or does not advance changes nothing.
   *
   * @param atS seconds since in
   * @param bathC the bath, °C; empty where not valid
   * @param tauS expected seconds to emergence at a temperature, °C
   */
  public ThermalTime step(double atS, OptionalDouble bathC, DoubleUnaryOperator tauS) {
    if (!(atS > elapsedS) || Double.isInfinite(atS)) {
      return this;
    }
    OptionalDouble reading = believable(bathC);
    if (reading.isEmpty()) {
      return new ThermalTime(atS, progress, validS, validC, lost);
    }
    double gapS = atS - validS;
    double pace = 1 / tauS.applyAsDouble(reading.getAsDouble());
    double before = validC.isPresent() ? 1 / tauS.applyAsDouble(validC.getAsDouble()) : pace;
    boolean bridged = gapS <= (validC.isPresent() ? BRIDGED_MAX_S : HELD_MAX_S);
    return new ThermalTime(
        atS, progress + gapS * (before + pace) / 2, atS, reading, lost || !bridged);
  }

  /** Whether it still knows: no gap was too long, and the last valid reading is not too old. */
  public boolean knows() {
    return validC.isPresent() && !lost && elapsedS - validS <= HELD_MAX_S;
  }

  /** Progress at a time near the last reading, seconds since in, its temperature held. */
  public double progressAt(double atS, DoubleUnaryOperator tauS) {
    return validC.isEmpty()
        ? 0
        : Math.max(0, progress + (atS - validS) / tauS.applyAsDouble(validC.getAsDouble()));
  }

  /** Progress now. */
  public double progressNow(DoubleUnaryOperator tauS) {
    return progressAt(elapsedS, tauS);
  }
}
