package trayward.host.session;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Everything a person may say of a print beside title and notes; nothing of it is obligatory. The
 * one table: request, form, search and export follow it. Immutable.
 */
public enum PrintField {
  /** What it was printed from. */
  NEGATIVE(FieldRule.name("negative", "Negative", 200), ""),
  /** The paper. */
  PAPER(FieldRule.name("paper", "Paper", 200), ""),
  /** What stands on the box of paper; speed and fog differ from batch to batch. */
  PAPER_BATCH(FieldRule.name("paper_batch", "Paper batch", 100), ""),
  /** Width of the image on the paper; the largest rolls are under 3 m wide. */
  WIDTH_MM(FieldRule.number("width_mm", "Image width", 1, 5000), "mm"),
  /** Height of the image on the paper. */
  HEIGHT_MM(FieldRule.number("height_mm", "Image height", 1, 5000), "mm"),
  /** As read off the enlarger's own scale. */
  ENLARGER_HEIGHT_MM(FieldRule.number("enlarger_height_mm", "Enlarger height", 0, 5000), "mm"),
  /** Image over negative: below 1 for a reduction, 1 for a contact print. */
  MAGNIFICATION(FieldRule.number("magnification", "Magnification", 0.05, 200), "x"),
  /** The f-number. */
  APERTURE(FieldRule.number("aperture", "Aperture", 1, 128), "f-number"),
  /** Exposure before stops over and burns; a contact print may take hours. */
  BASE_EXPOSURE_S(FieldRule.number("base_exposure_s", "Base exposure", 0.01, 36_000), "s"),
  /** How much more than the base it was given; a lith print gets 1 to 4. */
  STOPS_OVER(FieldRule.number("stops_over", "Stops over", -5, 15), "stops"),
  /** The test strip, in words. */
  TEST_STRIP(FieldRule.text("test_strip", "Test strip", 500), ""),
  /** Flashing, before or after. */
  FLASH(FieldRule.text("flash", "Flash", 500), ""),
  /** Burning in and holding back. */
  BURNS(FieldRule.text("burns", "Burns and dodges", 1000), ""),
  /** How the tray was moved. */
  AGITATION(FieldRule.name("agitation", "Agitation", 200), ""),
  /** What it looked like wet. */
  VERDICT_WET(FieldRule.text("verdict_wet", "Verdict, wet", 1000), ""),
  /** What it looks like dry: blotches may have gone, shadows have sunk. */
  VERDICT_DRY(FieldRule.text("verdict_dry", "Verdict, dry", 1000), ""),
  /** What went wrong. */
  FAULTS(FieldRule.text("faults", "Faults", 1000), "");

  /** The title of a print, kept beside these. */
  public static final FieldRule TITLE = FieldRule.text("title", "Title", Print.TITLE_MAX);

  /** The notes of a print, kept beside these. */
  public static final FieldRule NOTES = FieldRule.text("notes", "Notes", Print.NOTES_MAX);

  @SuppressWarnings("ImmutableEnumChecker") // a record of immutable values
  private final FieldRule rule;

  private final String unit;

  PrintField(FieldRule rule, String unit) {
    this.rule = rule;
    this.unit = unit;
  }

  /** What it takes. */
  public FieldRule rule() {
    return rule;
  }

  /** Its name in JSON, in the log and in exports. */
  public String word() {
    return rule.name();
  }

  /** Its unit; empty for a text. */
  public String unit() {
    return unit;
  }

  /** Whether it is a number. */
  public boolean number() {
    return rule.kind() == FieldRule.Kind.NUMBER;
  }

  /**
   * What the log keeps of a text that {@link #rule} takes: 8.0 as 8, a text without its margins.
   */
  public String kept(String text) {
    return number() && !text.isEmpty()
        ? new BigDecimal(text).stripTrailingZeros().toPlainString()
        : text.strip();
  }

  /** The field of exactly this name, empty where there is none. */
  public static Optional<PrintField> of(String word) {
    return Arrays.stream(values()).filter(field -> field.word().equals(word)).findFirst();
  }

  /** The names of all, in their order. */
  public static List<String> words() {
    return Arrays.stream(values()).map(PrintField::word).toList();
  }
}
