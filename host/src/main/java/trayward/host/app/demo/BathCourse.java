package trayward.host.app.demo;

import java.util.Random;

/**
 * The temperature of an invented bath, second by second: a warm-up, then a hold that wanders a
 * little and dips when a wet sheet goes in. One thread.
 */
final class BathCourse {

  /** What a bath at rest in the room begins at, °C. */
  private static final double ROOM_C = 21;

  /** Share of what is missing that a second of warm-up brings: two thirds in seven minutes. */
  private static final double WARMING = 1 / 420.0;

  /** Share of a wander that a second takes back, and its push, K: some 0.1 K in all. */
  private static final double CALMING = 1 / 150.0;

  private static final double PUSH_K = 0.012;

  /** What a sheet takes out of a litre, K. */
  private static final double SHEET_K = 0.25;

  private final Random random;
  private final double setC;
  private double missingK;
  private double wanderK;

  BathCourse(Random random, double setC) {
    this.random = random;
    this.setC = setC;
    this.missingK = setC - ROOM_C;
  }

  /** The bath a second later, °C. */
  double next() {
    missingK *= 1 - WARMING;
    wanderK += PUSH_K * random.nextGaussian() - CALMING * wanderK;
    return bathC();
  }

  double bathC() {
    return setC - missingK + wanderK;
  }

  /** A sheet goes in. */
  void sheet() {
    wanderK -= SHEET_K;
  }

  double setC() {
    return setC;
  }

  /** The plate is the hotter the more is missing, and the heater has more to do. */
  double plateC() {
    return bathC() + 6 + missingK;
  }

  double duty() {
    return Math.min(1, 0.35 + missingK / 4 + (wanderK < 0 ? -wanderK / 2 : 0));
  }
}
