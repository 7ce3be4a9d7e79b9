package trayward.controller.app;

import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.LearnedTray.Figure;
import trayward.controller.quantity.Range;
import trayward.controller.regulate.TrayDoubt;

/**
 * Within which a lesson is taken over: what lies outside is no tray of this kind, or no sound
 * warm-up, and must not steer the next one. Each range has its reason beside it. Stateless.
 */
final class LearnedBounds {

  /**
   * Share of the declared watts. Mains within 10 % (EN 50160) make 0.81 to 1.21 of a heater's
   * power, its rating another -10 to +5 % (IEC 60335): 0.73 to 1.27.
   */
  private static final Range HEATER = new Range(0.7, 1.3, "of the declared watts");

  /** What the watch over heat can tell from a dry one. */
  private static final Range PLATE = new Range(90, 2000, "J/K");

  /** From a tray standing on feet above its plate to one glued on; the watch's range too. */
  private static final Range COUPLING = new Range(4, 45, "W/K");

  /**
   * For each square metre of surface. Still air and radiation take about 10 W/(m² K) from a warm
   * surface (common practice), so less than a third of that is none; wet walls, floor and rim
   * together do not lose fifteen times as much.
   */
  private static final Range LOSS = new Range(3, 150, "W/(m² K)");

  /** A covered tray lies below: its lesson is of no use to an open one. Above, a gale blows. */
  private static final Range EVAPORATION = new Range(0.1, 4, "");

  /** From a bare sensor to one in a thick sheath. */
  private static final Range BATH_LAG = new Range(0.5, 45, "s");

  /** The same for one under a clamp, with paste or without. */
  private static final Range PLATE_LAG = new Range(0.3, 45, "s");

  /** From no wall at all to three kilograms of plastic that warm up with the bath. */
  private static final Range WALL = new Range(0.5, 5000, "J/K");

  /**
   * Noise 0.02 K and steps of 1/16 K make 0.027 K, a warm tray wall another tenth; beyond, two
   * lumps do not describe this tray.
   */
  static final double RMS_K = 0.15;

  private LearnedBounds() {}

  /** Why it is not taken over, in words; empty where it is. */
  static String wrong(LearnedTray t, double areaM2) {
    TrayDoubt d = TrayDoubt.DECLARED;
    String[] found = {
      off("heater", t.heater().value() / t.declaredW(), t.heater(), HEATER, d.heater()),
      off("plate", t.plate().value(), t.plate(), PLATE, d.plate()),
      off("coupling", t.coupling().value(), t.coupling(), COUPLING, d.coupling()),
      off("dry loss", t.loss().value() / areaM2, t.loss(), LOSS, d.loss()),
      off("evaporation", t.evaporation().value(), t.evaporation(), EVAPORATION, d.evaporation()),
      off("bath lag", t.bathLag().value(), t.bathLag(), BATH_LAG, d.bathLag()),
      off("plate lag", t.plateLag().value(), t.plateLag(), PLATE_LAG, d.plateLag()),
      off("wall", t.wall().value(), t.wall(), WALL, d.wall())
    };
    for (String wrong : found) {
      if (!wrong.isEmpty()) {
        return wrong;
      }
    }
    return t.rmsK() <= RMS_K
        ? ""
        : String.format(
            java.util.Locale.ROOT,
            "the readings miss the model by %.2f K, accepted is %s K at the most",
            t.rmsK(),
            Range.plain(RMS_K));
  }

  /** A number out of its range, or less sure than one merely declared. */
  private static String off(String what, double value, Figure figure, Range range, double most) {
    if (!range.contains(value)) {
      String found = String.format(java.util.Locale.ROOT, "%.3g", value);
      return what + ": found " + found + ", accepted is " + range.words();
    }
    return figure.doubt() > 0 && figure.doubt() <= most * 1.0001
        ? ""
        : what + ": as unsure as before the warm-up";
  }
}
