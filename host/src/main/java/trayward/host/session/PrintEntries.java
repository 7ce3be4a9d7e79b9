package trayward.host.session;

import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What was said of a print. Immutable.
 *
 * @param fields what is said, in the order of {@link PrintField}; what is not said is not there
 * @param steps what was done after the developer, in order
 * @param pictures its pictures, oldest first
 * @param history what stood there before, oldest first
 * @param bath what it went into; empty where no bath was in the book
 */
public record PrintEntries(
    Map<PrintField, String> fields,
    List<PrintStep> steps,
    List<PrintPicture> pictures,
    List<Correction> history,
    Optional<PrintBath> bath) {

  /** Nothing said. */
  public static final PrintEntries NONE =
      new PrintEntries(Map.of(), List.of(), List.of(), List.of(), Optional.empty());

  /**
   * From when on the verdict is asked again: over night a print is dry, and what looked blotchy wet
   * has often dried out. Common practice.
   */
  public static final Duration DRY_DOWN = Duration.ofHours(12);

  /** Copies what it is given. */
  public PrintEntries {
    Map<PrintField, String> ordered = new EnumMap<>(PrintField.class);
    ordered.putAll(fields);
    fields = Collections.unmodifiableMap(ordered);
    steps = List.copyOf(steps);
    pictures = List.copyOf(pictures);
    history = List.copyOf(history);
  }

  /** What a field says; empty where nothing. */
  public String of(PrintField field) {
    return fields.getOrDefault(field, "");
  }

  /** Whether a pulled print was judged wet, has dried since, and was not judged again. */
  public static boolean askAgain(Print print, Map<PrintField, String> fields, Instant now) {
    Optional<Instant> pulled = print.pullAt().map(Mark::wall);
    return fields.containsKey(PrintField.VERDICT_WET)
        && !fields.containsKey(PrintField.VERDICT_DRY)
        && pulled.filter(at -> !now.isBefore(at.plus(DRY_DOWN))).isPresent();
  }
}
