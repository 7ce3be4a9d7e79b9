package trayward.host.app.campaign;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Random numbers of one seed. Its algorithm is fixed by the library's specification and mixes well,
 * so that neighbouring seeds have nothing in common. Mutable; one thread.
 */
final class Dice {

  private final SplittableRandom random;

  Dice(long seed) {
    this.random = new SplittableRandom(seed);
  }

  double between(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  /** A time or size to a tenth, as a scenario has it. */
  double tenths(double from, double to) {
    return Math.round(between(from, to) * 10) / 10.0;
  }

  boolean chance(double share) {
    return random.nextDouble() < share;
  }

  <T> T of(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  /** Few or many: evenly over the orders of magnitude. */
  double magnitudes(double from, double to) {
    return Math.round(from * Math.pow(to / from, random.nextDouble()) * 10) / 10.0;
  }
}
