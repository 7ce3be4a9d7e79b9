package trayward.host.app.demo;

import java.util.List;
import java.util.Random;

/**
 * The invented setting: an island that is on no map, papers nobody makes, negatives nobody took.
 * Stateless.
 */
final class Scenery {

  /** What the season is printed on. */
  static final List<String> PAPERS = List.of("Kelpgrove Ivory", "Kelpgrove Matt", "Old Reedbed");

  /** The two parts of the developer. */
  static final String PART_A = "Sedgewater A";

  /** Its activator. */
  static final String PART_B = "Sedgewater B";

  private static final List<String> PLACES =
      List.of(
          "Long Skerry, the boathouse",
          "Tern Haven at low tide",
          "The chapel wall, Outer Holm",
          "Salt pans, evening",
          "Ferry steps in rain",
          "Nettle garden",
          "Lamp room, third landing",
          "Drying nets",
          "The quarry road",
          "Bell buoy, far off",
          "Window with gourds",
          "Peat stacks");

  private static final List<String> SYMPTOMS =
      List.of(
          "",
          "",
          "",
          "tired eyes toward the end",
          "slight headache, opened the door for ten minutes");

  private Scenery() {}

  /** A place with its invented negative. */
  record Negative(String place, String name) {}

  static Negative negative(Random random) {
    int which = random.nextInt(PLACES.size());
    return new Negative(
        PLACES.get(which), String.format("IN-%02d frame %d", 3 + which / 3, 1 + which * 3 % 12));
  }

  static String paper(int evening) {
    return PAPERS.get(evening / 2 % PAPERS.size());
  }

  static String symptoms(Random random) {
    return SYMPTOMS.get(random.nextInt(SYMPTOMS.size()));
  }

  /** What a printer would say of a sheet pulled so early or late, as ln of ratio over middle. */
  static String wet(double late) {
    if (late < -0.08) {
      return "pulled early: shadows still open, no full black";
    }
    return late > 0.08
        ? "pulled late: blacks ran together in the lower left"
        : "good: gritty blacks, warm lights";
  }

  static String dry(double late) {
    if (late < -0.08) {
      return "soft, but the lights are the best of the lot";
    }
    return late > 0.08 ? "too hard, print again" : "sank a little in drying; keep";
  }
}
