package trayward.host.app.campaign;

import java.util.Locale;

/** Draws tray, room, probes, supply and set temperature, within the limits of the design. */
final class TrayDice {

  /** A supply of 1.1 times its nominal voltage gives 1.21 times the power. */
  private static final double STRONG_SUPPLY = 1.21;

  private final Dice dice;
  private final boolean plateFitted;
  private final boolean secondFitted;

  TrayDice(Dice dice, boolean plateFitted, boolean secondFitted) {
    this.dice = dice;
    this.plateFitted = plateFitted;
    this.secondFitted = secondFitted;
  }

  /**
   * The tables.
   *
   * @param setC set temperature, °C
   * @param airC the room, °C
   * @param startC bath at the start, °C
   */
  String tables(double setC, double airC, double startC) {
    // Without a plate probe the true heater may have 250 W, on the strongest supply (SR-07).
    double ratedW = dice.between(150, plateFitted ? 400 / STRONG_SUPPLY : 250 / STRONG_SUPPLY);
    double supply = dice.between(0.9, 1.1);
    double litres = dice.between(0.5, 3);
    StringBuilder out = new StringBuilder();
    add(out, "[tray]\nliquid_l = %.3f\nheater_w = %.1f\n", litres, ratedW * supply * supply);
    add(out, "plate_j_per_k = %.0f\n", dice.between(700, 1800));
    add(out, "plate_to_bath_w_per_k = %.2f\n", dice.between(12, 25));
    add(out, "bath_loss_w_per_k = %.2f\n", dice.between(1.5, 4));
    add(out, "evaporation_factor = %.2f\nstart_c = %.1f\n", dice.between(0.5, 2), startC);
    add(out, "[room]\nair_c = %.1f\nrelative_humidity = %.2f\n", airC, dice.between(0.2, 0.8));
    probe(out, "bath_probe", "", 3, 15);
    probe(out, "second_bath_probe", "present = " + secondFitted + "\n", 3, 15);
    probe(out, "plate_probe", "present = " + plateFitted + "\n", 2, 8);
    // What the person declared: the plate on the heater, and a measuring jug.
    double poured = litres * dice.between(0.9, 1.1);
    add(out, "[model]\nliquid_l = %.3f\nheater_w = %.1f\n", poured, ratedW);
    add(out, "[control]\nset_c = %.1f\nhost_required = %b\n", setC, dice.chance(0.5));
    return out.toString();
  }

  /** Lag of sheathed probes; noise and offset of a data sheet's 0.5 K class. */
  private void probe(StringBuilder out, String name, String more, double least, double most) {
    add(out, "[%s]\n%slag_s = %.1f\n", name, more, dice.between(least, most));
    add(out, "noise_k = %.3f\n", dice.between(0, 0.05));
    add(out, "offset_k = %.2f\n", dice.between(-0.5, 0.5));
  }

  private static void add(StringBuilder out, String words, Object... values) {
    out.append(String.format(Locale.ROOT, words, values));
  }
}
