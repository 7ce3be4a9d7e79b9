package trayward.host.app.goals;

import java.util.Locale;

/** What regulates. */
enum Contender {
  /** This program's regulator. */
  OURS("Trayward"),
  /** {@link PlainPid}. */
  PID("plain PID"),
  /** {@link Thermostat}. */
  THERMOSTAT("thermostat");

  private final String words;

  Contender(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  /** For a key of JSON. */
  String key() {
    return name().toLowerCase(Locale.ROOT);
  }
}
