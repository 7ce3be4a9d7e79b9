package trayward.host.store;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/**
 * The index of the words said of each print: title, notes, every field, what steps were done in.
 */
final class WordRows {

  /** Most words looked for at once: nobody types more, and the rest changes little. */
  static final int WORDS_MAX = 16;

  private WordRows() {}

  /** Brings the index in step with what is said of a print now. */
  static void refresh(Handle handle, long number) {
    handle
        .createUpdate("DELETE FROM print_words WHERE rowid = :number")
        .bind("number", number)
        .execute();
    handle
        .createUpdate(
            """
            INSERT INTO print_words (rowid, words)
              SELECT number, title || ' ' || notes
                || coalesce((SELECT ' ' || group_concat(value, ' ') FROM print_fields
                  WHERE print = number), '')
                || coalesce((SELECT ' ' || group_concat(what, ' ') FROM print_steps
                  WHERE print = number AND taken_back_wall_ms IS NULL), '')
              FROM prints WHERE number = :number
            """)
        .bind("number", number)
        .execute();
  }

  /**
   * A person's words as a query: each must be there, or a word that begins so. Each is quoted, so
   * that nothing of it is syntax. Empty where there is no letter and no digit.
   */
  static String query(String words) {
    return Arrays.stream(words.split("[\\s\\u0000]+"))
        .filter(word -> word.codePoints().anyMatch(Character::isLetterOrDigit))
        .limit(WORDS_MAX)
        .map(word -> '"' + word.replace("\"", "\"\"") + "\"*")
        .collect(Collectors.joining(" "));
  }
}
