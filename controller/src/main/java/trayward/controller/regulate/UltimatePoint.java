package trayward.controller.regulate;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.util.FastMath;

/**
 * Where a proportional controller would just make a plant swing for ever: the frequency at which
 * its phase passes -180 degrees. Immutable; safe on any thread.
 *
 * @param gain Ku, the ultimate gain, duty per K
 * @param periodS Pu, the period of the swing, s
 */
public record UltimatePoint(double gain, double periodS) {

  /** How far beyond the plant's own times the phase is followed: no crossing lies further out. */
  private static final double REACH = 100;

  /** Times of a plant further apart than this belong to no plant that is heated. */
  private static final double WIDEST = 1e12;

  /** Angular frequency of the swing, rad/s. */
  public double radPerS() {
    return 2 * FastMath.PI / periodS;
  }

  /**
   * The ultimate point of {@code plant}: the lowest frequency at which its phase falls through -180
   * degrees. Empty where it never does, as for one or two lags without a delay: such a plant stands
   * any gain. Empty too where the plant's times are more than 1e12 times apart.
   */
  public static Optional<UltimatePoint> of(TransferFunction plant) {
    double slowestS = plant.slowestS();
    double fastestS = plant.fastestS();
    if (slowestS == 0 || slowestS / fastestS > WIDEST) {
      return Optional.empty();
    }
    FrequencySweep sweep = new FrequencySweep(1 / (REACH * slowestS), REACH / fastestS);
    double[] crossings = sweep.crossings(w -> plant.phaseRad(w) + FastMath.PI);
    return Arrays.stream(crossings)
        .filter(w -> plant.phaseRad(w * (1 - 1e-6)) > plant.phaseRad(w * (1 + 1e-6)))
        .mapToObj(w -> new UltimatePoint(1 / plant.sizeAt(w), 2 * FastMath.PI / w))
        .findFirst();
  }
}
