package trayward.controller.app;

import java.util.regex.Pattern;

/** A file of settings that cannot be used (SR-19): one line with file, key, found and accepted. */
public final class ConfigRefused extends Exception {

  private static final long serialVersionUID = 1L;

  /** Whatever would break the line, also out of the file that is refused. */
  private static final Pattern CONTROL = Pattern.compile("[\\p{Cntrl}\\u0085\\u2028\\u2029]+");

  /**
   * Longest line, characters: some screens' widths; what was found may be a spoilt file's worth.
   */
  private static final int LINE_MAX = 600;

  /** What of a longer line is kept of its end, where it says what is accepted, characters. */
  private static final int END_MAX = 200;

  /** Refuses with one line for the person. */
  public ConfigRefused(String line) {
    super(cut(CONTROL.matcher(line).replaceAll(" ")));
  }

  private static String cut(String line) {
    return line.length() <= LINE_MAX
        ? line
        : line.substring(0, LINE_MAX - END_MAX - 1) + "…" + line.substring(line.length() - END_MAX);
  }

  /** The line every refused key makes. */
  static ConfigRefused key(String file, String key, String found, String accepted) {
    return new ConfigRefused(file + ": " + key + ": found " + found + ", accepted is " + accepted);
  }

  /** The line for a person; never null. */
  public String line() {
    String message = getMessage();
    return message == null ? "the settings cannot be used" : message;
  }
}
