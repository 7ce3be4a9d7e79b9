package trayward.host.store;

import java.util.Map;
import trayward.host.session.PrintField;

/**
 * Which prints are looked for. Immutable.
 *
 * @param words words that must stand in title, notes, fields or steps, in any order, or beginnings
 *     of words; empty for any. Words without a letter or a digit are passed over
 * @param said what fields must say, exactly
 */
public record PrintQuery(String words, Map<PrintField, String> said) {

  /** Longest words, characters: a line. */
  public static final int WORDS_MAX = 200;

  /** Every print. */
  public static final PrintQuery ALL = new PrintQuery("", Map.of());

  /** Copies the map; words that say nothing become none. */
  public PrintQuery {
    words = WordRows.query(words).isEmpty() ? "" : words;
    said = Map.copyOf(said);
  }
}
