package trayward.controller.safety;

import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import trayward.controller.regulate.TrayModel;

/**
 * A stretch of full heat in which plate and bath rose together: its balance of energy, by the
 * believed tray, weighs the liquid. A value.
 *
 * <pre>
 *   p Q - d D - f E = c Cp dTp + 4180 V dTb
 * </pre>
 *
 * <p>V are the litres; Q, D, E and Cp are heat, dry losses, evaporation and plate as believed; p,
 * d, f and c are the shares by which the tray differs. The lag of probes falls out, because both
 * ends lag alike.
 *
 * @param heatJ commanded heat at the believed power, J
 * @param dryJ dry losses of bath and plate by the belief, J
 * @param evaporationJ evaporative loss by the belief, J
 * @param plateJ believed capacity of the plate times its rise, J
 * @param bathK rise of the bath, K
 */
record HeatStretch(double heatJ, double dryJ, double evaporationJ, double plateJ, double bathK) {

  /** Believed power may be 15 % high and the supply 10 % off (power goes with its square). */
  private static final double POWER_MIN = 0.65;

  private static final double POWER_MAX = 1.25;

  /** Noise and rounding of two means of ten readings, and some unevenness of the bath, K. */
  private static final double DOUBT_K = 0.12;

  /** What a supply drifts between two stretches, as a share of its power. */
  private static final double DRIFT = 0.05;

  /**
   * A tray as it may differ from the belief.
   *
   * @param dry dry losses over the believed ones
   * @param evaporation evaporation over the believed one
   * @param plate capacity of the plate over the believed one
   */
  private record Tray(double dry, double evaporation, double plate) {

    static final Tray BELIEVED = new Tray(1, 1, 1);

    Tray covered() {
      return new Tray(dry, 0, plate);
    }
  }

  /** Dry losses 1.5 to 4 W/K for 2.5; evaporation half to twice; plates 660 to 1870 J for 1100. */
  private static final Tray[] CORNERS = {
    new Tray(0.6, 0.5, 0.6), new Tray(0.6, 0.5, 1.7), new Tray(0.6, 2, 0.6), new Tray(0.6, 2, 1.7),
    new Tray(1.6, 0.5, 0.6), new Tray(1.6, 0.5, 1.7), new Tray(1.6, 2, 0.6), new Tray(1.6, 2, 1.7)
  };

  /** Heat that neither left nor stayed in the liquid, J. */
  private double elsewhereJ(Tray tray) {
    return tray.dry() * dryJ + tray.evaporation() * evaporationJ + tray.plate() * plateJ;
  }

  private double litres(double power, Tray tray, double doubtK) {
    double rise = TrayModel.LITRE_J_PER_K * (bathK + doubtK);
    return Math.max(0, (power * heatJ - elsewhereJ(tray)) / rise);
  }

  private double power(double litres, Tray tray, double doubtK) {
    double rise = TrayModel.LITRE_J_PER_K * (bathK + doubtK);
    double power = (litres * rise + elsewhereJ(tray)) / heatJ;
    return Math.max(POWER_MIN, Math.min(POWER_MAX, power));
  }

  /** Litres where nothing is known of the power: wide. */
  private LitreBounds alone() {
    return new LitreBounds(
        litres(1, Tray.BELIEVED, 0),
        over(tray -> litres(POWER_MIN, tray, DOUBT_K), false),
        over(tray -> litres(POWER_MAX, tray.covered(), -DOUBT_K), true));
  }

  /**
   * Litres where an earlier stretch saw what was said then: power, losses and plate are the same
   * ones, so that the ratio of the two rates counts. A cover may have been laid on or taken off.
   */
  private LitreBounds after(Anchor anchor) {
    HeatStretch then = anchor.stretch();
    double said = anchor.litres();
    double power = then.power(said, Tray.BELIEVED, 0);
    double low =
        over(
            tray ->
                Math.min(
                    litres(then.least(said, tray), tray, DOUBT_K),
                    litres(then.least(said, tray.covered()), tray, DOUBT_K)),
            false);
    double high =
        over(
            tray ->
                Math.max(
                    litres(then.most(said, tray), tray, -DOUBT_K),
                    litres(then.most(said, tray), tray.covered(), -DOUBT_K)),
            true);
    double best = litres(power, Tray.BELIEVED, 0);
    return new LitreBounds(Math.max(low, Math.min(high, best)), low, high);
  }

  private double most(double said, Tray tray) {
    return Math.min(POWER_MAX, power(said, tray, DOUBT_K) * (1 + DRIFT));
  }

  private double least(double said, Tray tray) {
    return Math.max(POWER_MIN, power(said, tray, -DOUBT_K) * (1 - DRIFT));
  }

  /** The balance is linear in each share, so that its ends lie at the corners. */
  private static double over(ToDoubleFunction<Tray> litres, boolean most) {
    double end = most ? 0 : Double.POSITIVE_INFINITY;
    for (Tray tray : CORNERS) {
      double here = litres.applyAsDouble(tray);
      end = most ? Math.max(end, here) : Math.min(end, here);
    }
    return end;
  }

  /** Litres that this stretch allows, compared with the anchor where there is one. */
  LitreBounds litres(@Nullable Anchor anchor) {
    return anchor == null ? alone() : after(anchor);
  }

  /**
   * The first stretch since the level was said: from then on rates are compared with it.
   *
   * @param stretch what was seen
   * @param litres what the book said then, L
   */
  record Anchor(HeatStretch stretch, double litres) {}
}
