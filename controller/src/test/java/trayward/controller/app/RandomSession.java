package trayward.controller.app;

import java.util.Locale;
import java.util.Random;

/** A healthy session drawn from a seed: tray, room, probes, supply and what a printer does. */
final class RandomSession {

  static final int LENGTH_S = 7200;

  private final Random random;
  private final boolean plate;
  private final boolean small;
  private final StringBuilder actions = new StringBuilder();

  private RandomSession(long seed, boolean plate) {
    this.random = new Random(seed * 7919 + (plate ? 0 : 1));
    this.plate = plate;
    this.small = seed % 4 == 1;
  }

  /** The scenario file of a seed. */
  static String toml(long seed, boolean plate) {
    return new RandomSession(seed, plate).draw(seed);
  }

  private String draw(long seed) {
    // Without a plate probe a heater may have 250 W at most (SR-07); a strong supply adds to it.
    double declaredW = small ? between(60, 165) : between(150, plate ? 400 : 205);
    double declaredL = small ? between(0.1, 0.5) : between(0.5, 3);
    double supply = between(0.9, 1.1);
    double trueW = declaredW * between(0.85, 1) * supply * supply;
    double trueL = declaredL * between(0.9, 1.1);
    double air = between(10, 30);
    StringBuilder out = new StringBuilder();
    add(out, "name = \"healthy %d\"\nseed = %d\nduration_s = %d\n", seed, seed, LENGTH_S);
    add(out, "[tray]\nliquid_l=%.3f\nheater_w=%.1f\n", trueL, trueW);
    if (small) {
      undeclared(out, trueL);
    } else {
      add(out, "plate_to_bath_w_per_k=%.2f\n", between(12, 25));
      add(out, "plate_j_per_k=%.0f\n", between(700, 1800));
      add(out, "evaporation_factor=%.2f\n", between(0.5, 2));
      add(out, "bath_loss_w_per_k=%.2f\n", between(1.5, 4));
    }
    double start = random.nextInt(3) == 0 ? between(air, 40) : air;
    // A fifth pours cold water in a warm room: the bath warms by itself, through the purge and on.
    add(out, "start_c=%.1f\n", seed % 5 == 2 ? Math.max(4, air - 5 - seed % 11) : start);
    add(out, "[room]\nair_c=%.1f\nrelative_humidity=%.2f\n", air, between(0.2, 0.8));
    probe(out, "bath_probe", 3, 15, "");
    probe(out, "plate_probe", 2, 8, "present=" + plate + "\n");
    if (seed % 3 == 1) {
      probe(out, "second_bath_probe", 3, 15, "present=true\n");
    }
    add(out, "[model]\nliquid_l=%.3f\nheater_w=%.1f\n", declaredL, declaredW);
    add(out, "[control]\nset_c=%d\n", 20 + random.nextInt(31));
    act(0, "do=\"start\"");
    if (seed % 7 == 3) {
      act(20 + (int) (seed % 30), "do=\"cover\"");
      act(55 + (int) (seed % 200), "do=\"uncover\"");
    }
    for (int i = 0; i < 14; i++) {
      action(450 + 460 * i + random.nextInt(300), air);
    }
    return out.append(actions).toString();
  }

  /** A small tray of which the controller is told watts and litres only. */
  private void undeclared(StringBuilder out, double litres) {
    add(out, "area_m2=%.4f\n", litres / between(10, 25)); // 10 to 25 mm deep
    add(out, "plate_to_bath_w_per_k=%.2f\n", between(4, 12));
    add(out, "plate_j_per_k=%.0f\n", between(100, 400));
    add(out, "evaporation_factor=%.2f\n", between(0.5, 2));
    add(out, "bath_loss_w_per_k=%.2f\n", between(0.3, 1));
  }

  private void action(int t, double air) {
    switch (random.nextInt(8)) {
      case 0 -> act(t, "do=\"pour\"\nlitres=0.3\ntemp_c=" + (int) between(air - 5, air + 5));
      case 1 ->
          act(t, "do=\"pour\"\nlitres=%.2f\ntemp_c=%.0f", between(0.05, 0.15), between(40, 70));
      case 2, 3 -> act(t, "do=\"sheet\"\nheat_capacity_j_per_k=210\ntemp_c=15");
      case 4 -> act(t, random.nextBoolean() ? "do=\"cover\"" : "do=\"uncover\"");
      case 5, 6 -> act(t, "do=\"set-temperature\"\ncelsius=" + (20 + random.nextInt(31)));
      default -> {
        act(t, "do=\"stop\"");
        act(t + 30 + random.nextInt(300), "do=\"start\"");
      }
    }
  }

  private void probe(StringBuilder out, String name, double from, double to, String more) {
    add(out, "[%s]\n%slag_s=%.1f\n", name, more, between(from, to));
    add(out, "noise_k=%.3f\noffset_k=%.2f\n", between(0, 0.05), between(-0.5, 0.5));
  }

  private void act(int t, String words, Object... values) {
    add(actions, "[[at]]\nt_s=%d\n", t);
    add(actions, words + "\n", values);
  }

  private static void add(StringBuilder out, String words, Object... values) {
    out.append(String.format(Locale.ROOT, words, values));
  }

  private double between(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }
}
