package trayward.host.bath;

/**
 * What was wrong with something a person entered. Immutable.
 *
 * @param field name of the field concerned
 * @param found what was there, shortened to {@value #FOUND_MAX} characters
 * @param accepted what is accepted instead, in words
 */
public record Problem(String field, String found, String accepted) {

  /** Longest echo of what was found: enough to recognise it, no way to fill a page. */
  public static final int FOUND_MAX = 80;

  /** Shortens what was found. */
  public Problem {
    found = found.length() <= FOUND_MAX ? found : found.substring(0, FOUND_MAX - 1) + "…";
  }
}
