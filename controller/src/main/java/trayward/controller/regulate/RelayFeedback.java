package trayward.controller.regulate;

import java.util.Optional;
import org.hipparchus.util.FastMath;

/**
 * What a relay in place of the controller tells of a plant: it swings by itself near its ultimate
 * point, and how far it swings tells the gain there. Source: Åström and Hägglund 1984, Automatica
 * 20:645, by the describing function of the relay; the form with hysteresis is from memory.
 *
 * <p>The describing function knows only the fundamental wave. For a tray the gain so found is 6 to
 * 17 % below the true ultimate gain (first and second order with delay), the period within 3 %.
 * Immutable; safe on any thread.
 *
 * @param amplitude d: the relay gives its middle duty plus or minus this
 * @param hysteresisK eps: it switches where the bath is this far beyond the set temperature, K
 */
public record RelayFeedback(double amplitude, double hysteresisK) {

  /** A relay that switches at the set temperature itself. */
  public static RelayFeedback ideal(double amplitude) {
    return new RelayFeedback(amplitude, 0);
  }

  /**
   * The ultimate point by 4 d / (pi sqrt(a^2 - eps^2)); without hysteresis this is 4 d / (pi a).
   * Empty where the swing is not beyond the hysteresis or no swing at all.
   *
   * <p>With hysteresis the swing lies at {@link #phaseRad}, not at -180 degrees, and the plant's
   * gain there is pi a / (4 d): the root gives the part of it along the real axis.
   *
   * @param swingK a, half of the distance between the swing's highest and lowest, K
   * @param periodS period of the swing, s
   */
  public Optional<UltimatePoint> estimate(double swingK, double periodS) {
    boolean swings = swingK > hysteresisK && periodS > 0 && amplitude > 0;
    double reachedK = FastMath.sqrt(swingK * swingK - hysteresisK * hysteresisK);
    return swings
        ? Optional.of(new UltimatePoint(4 * amplitude / (FastMath.PI * reachedK), periodS))
        : Optional.empty();
  }

  /** Phase of the plant where it swings, rad: -pi + asin(eps / a). */
  public double phaseRad(double swingK) {
    return -FastMath.PI + FastMath.asin(hysteresisK / swingK);
  }
}
