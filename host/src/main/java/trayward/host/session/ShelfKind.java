package trayward.host.session;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a person keeps on the shelf and uses again, each with the fields it may have. */
public enum ShelfKind {
  /** A paper: how it behaves, and so how early to pull it. */
  PAPER("paper"),
  /** A developer concentrate, one part of it where it has two. */
  CONCENTRATE("concentrate"),
  /** A stock solution of salts, or a restrainer, which counts as no developer. */
  STOCK("stock"),
  /** A make-up: what goes into a bath of some litres. */
  MAKE_UP("make-up"),
  /** A way to expose. */
  EXPOSURE("exposure"),
  /** A bath after the developer: stop, fix, bleach, toner, washing aid. */
  WORKING_BATH("working-bath"),
  /** A light that paper is handled in, and its last fog test. */
  LIGHT("light");

  private static final List<FieldRule> OF_PAPER =
      List.of(
          FieldRule.text("behaviour", "how it behaves, such as blacks that gain in the fix", 500),
          FieldRule.number("pull_early_s", "pull earlier by, s", 0, 120),
          FieldRule.number("reciprocity_p", "reciprocity exponent p, as tested", 0.5, 1),
          FieldRule.text("note", "note", 500));

  private static final List<FieldRule> OF_CONCENTRATE =
      List.of(
          FieldRule.number("bromide_g_per_l", "bromide in it as KBr, g/L", 0, 400),
          FieldRule.number("bromide_doubt_g_per_l", "bromide, give or take, g/L", 0, 400),
          FieldRule.number("sulfite_g_per_l", "sulfite in it as Na2SO3, g/L", 0, 400),
          FieldRule.number("sulfite_doubt_g_per_l", "sulfite, give or take, g/L", 0, 400),
          FieldRule.dilution("dilution", "usual dilution"),
          FieldRule.text("note", "note", 500));

  private static final List<FieldRule> OF_STOCK =
      List.of(
          FieldRule.number("bromide_percent", "potassium bromide, % weight in volume", 0, 40),
          FieldRule.number("sulfite_percent", "sodium sulfite, % weight in volume", 0, 40),
          FieldRule.dilution("dilution", "stated dilution"),
          FieldRule.text("note", "note", 500));

  private static final List<FieldRule> OF_MAKE_UP =
      List.of(
          FieldRule.number("litres", "litres", 0.05, 20),
          FieldRule.text("concentrates", "concentrates, A then B, with commas", 200),
          FieldRule.dilution("dilution", "dilution, such as 1+1+20"),
          FieldRule.text("note", "note", 500));

  private static final List<FieldRule> OF_EXPOSURE =
      List.of(
          FieldRule.number("enlarger_height_mm", "enlarger height, mm", 1, 3000),
          FieldRule.number("magnification", "magnification", 0.05, 100),
          FieldRule.number("aperture", "aperture, f-number", 1, 128),
          FieldRule.number("base_exposure_s", "base exposure, s", 0.1, 7200),
          FieldRule.number("stops_over", "stops over", -5, 15),
          FieldRule.text("note", "note", 500));

  private static final List<FieldRule> OF_WORKING_BATH =
      List.of(
          FieldRule.text("purpose", "what it is: stop, fix, bleach, toner, washing aid", 80),
          FieldRule.number("litres", "litres", 0.05, 20),
          FieldRule.dilution("dilution", "dilution"),
          FieldRule.date("made", "made on"),
          FieldRule.number("keeps_days", "keeps for, days", 1, 3650),
          FieldRule.number("capacity_m2_per_l", "good for, m² of paper a litre", 0.01, 100),
          FieldRule.number("wash_min", "wash after it, min", 0, 600),
          FieldRule.number("test_every_m2", "residual test after each, m²", 0.01, 100),
          FieldRule.date("tested", "last residual test on"),
          FieldRule.text("note", "note", 500));

  private static final List<FieldRule> OF_LIGHT =
      List.of(
          FieldRule.text("purpose", "safelight, inspection light, screen", 80),
          FieldRule.date("tested", "fog test on"),
          FieldRule.number("clean_min", "longest time without a visible change, min", 0.1, 240),
          FieldRule.number("fogged_min", "shortest time with one, min", 0.1, 240),
          FieldRule.number("again_days", "test again after, days", 1, 3650),
          FieldRule.number("handling_min", "from box to developer, min", 0, 240),
          FieldRule.text("note", "paper, lamp, distance, pre-exposure", 500));

  private final String word;

  ShelfKind(String word) {
    this.word = word;
  }

  /** The word for it in the log and in JSON. */
  public String word() {
    return word;
  }

  /** The fields it may have; none must be filled in. */
  public List<FieldRule> fields() {
    return switch (this) {
      case PAPER -> OF_PAPER;
      case CONCENTRATE -> OF_CONCENTRATE;
      case STOCK -> OF_STOCK;
      case MAKE_UP -> OF_MAKE_UP;
      case EXPOSURE -> OF_EXPOSURE;
      case WORKING_BATH -> OF_WORKING_BATH;
      case LIGHT -> OF_LIGHT;
    };
  }

  /** The kind of exactly this word; empty where there is none. */
  public static Optional<ShelfKind> of(String word) {
    return Arrays.stream(values()).filter(k -> k.word.equals(word)).findFirst();
  }
}
