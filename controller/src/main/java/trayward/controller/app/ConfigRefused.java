package trayward.controller.app;

import java.util.regex.Pattern;

/** A file of settings that cannot be used (SR-19): one line with file, key, found and accepted. */
public final class ConfigRefused extends Exception {

  private static final long serialVersionUID = 1L;

  /** Whatever would break the line, also out of the file that is refused. */
  private static final Pattern CONTROL = Pattern.compile("[\\p{Cntrl}\\u0085\\u2028\\u2029]+");

  /** Refuses with one line for the person. */
  public ConfigRefused(String line) {
    super(CONTROL.matcher(line).replaceAll(" "));
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
