package trayward.controller.app;

/** A file of settings that cannot be used (SR-19): one line with file, key, found and accepted. */
public final class ConfigRefused extends Exception {

  private static final long serialVersionUID = 1L;

  /** Refuses with one line for the person. */
  public ConfigRefused(String line) {
    super(line);
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
