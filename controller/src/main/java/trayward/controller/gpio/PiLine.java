package trayward.controller.gpio;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * What a line of the chip may serve as, with the line it has where nobody says otherwise. Outputs
 * stand on lines that the chip holds low from power-up until a program takes them; none stands on
 * the lines of the probes' bus, the serial port, or the two buses for additions.
 */
public enum PiLine {
  /** The cycling relay. */
  HEATER_RELAY(Kind.OUTPUT, 17, "relay that cycles with the duty"),
  /** The rarely switched relay in series with it. */
  SAFETY_RELAY(Kind.OUTPUT, 27, "relay in series with it, rarely switched"),
  /** What holds the safety relay's own hardware in. */
  WATCHDOG_LINE(Kind.OUTPUT, 22, "changes at every healthy scan; hardware drops the heat without"),
  /** The extraction fan. */
  FAN(Kind.OUTPUT, 23, "relay of the extraction fan"),
  /** The sounder beside the tray. */
  BUZZER(Kind.OUTPUT, 24, "sounder beside the tray"),
  /** The red lamp beside it, where one is wired. */
  LAMP(Kind.EXTRA, 25, "red lamp beside the sounder, in the same rhythm; optional"),
  /** The airflow or differential-pressure switch. */
  AIRFLOW(Kind.LEVEL, 5, "closed while air moves"),
  /** The fan's tachometer. */
  TACHOMETER(Kind.EDGES, 6, "pulses of the fan; every one is counted"),
  /** The stop button, normally closed. */
  STOP_BUTTON(Kind.CAUGHT, 13, "normally closed: a broken wire stops"),
  /** The reset button. */
  RESET_BUTTON(Kind.PRESS, 19, "closed while pressed"),
  /** The presence button. */
  PRESENCE_BUTTON(Kind.PRESS, 26, "closed while pressed"),
  /** The foot switch. */
  PEDAL(Kind.PRESS, 16, "closed while pressed"),
  /** The start button, where one is wired. */
  START_BUTTON(Kind.EXTRA_PRESS, 12, "closed while pressed; optional"),
  /** Read-back of the heater relay's contact. */
  HEATER_CONTACT(Kind.READ_BACK, 20, "closed with the heater relay's contact; optional"),
  /** Read-back of the safety relay's contact. */
  SAFETY_CONTACT(Kind.READ_BACK, 21, "closed with the safety relay's contact; optional");

  /** How a line is used. */
  public enum Kind {
    /** Written by each scan. */
    OUTPUT,
    /** Written by each scan; there only where it is wired. */
    EXTRA,
    /** Looked at in each scan. */
    LEVEL,
    /** Looked at in each scan, and an opening between two scans is caught. */
    CAUGHT,
    /** A press between two scans is caught, and bouncing is not counted. */
    PRESS,
    /** As a press; there only where it is wired: a loose line must not start anything. */
    EXTRA_PRESS,
    /** Every edge is counted, without debounce. */
    EDGES,
    /** As a level; there only where it is wired. */
    READ_BACK
  }

  /** A contact bounces for a few milliseconds; common practice. */
  private static final int PRESS_MICROS = 10_000;

  /** A spark elsewhere is shorter, a finger longer. */
  private static final int CAUGHT_MICROS = 1_000;

  private final Kind kind;
  private final int line;
  private final String meaning;

  PiLine(Kind kind, int line, String meaning) {
    this.kind = kind;
    this.line = line;
    this.meaning = meaning;
  }

  /** How it is used. */
  public Kind kind() {
    return kind;
  }

  /** What it does, one clause for the notes. */
  public String meaning() {
    return meaning;
  }

  /** As a configuration calls it. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** As a sentence calls it. */
  public String words() {
    return key().replace('_', ' ');
  }

  /** The function of a key. */
  public static Optional<PiLine> of(String key) {
    return Arrays.stream(values()).filter(line -> line.key().equals(key)).findFirst();
  }

  /** Whether it is written. */
  public boolean output() {
    return kind == Kind.OUTPUT || kind == Kind.EXTRA;
  }

  /** Whether it may be left out. */
  public boolean optional() {
    return kind == Kind.READ_BACK || kind == Kind.EXTRA || kind == Kind.EXTRA_PRESS;
  }

  /** Whether its edges count only after standing still for a time that may be set. */
  public boolean debounced() {
    return kind == Kind.PRESS || kind == Kind.EXTRA_PRESS || kind == Kind.CAUGHT;
  }

  /** Whether a broken wire must read as open: what it proves is never proven by a loose end. */
  public boolean mustPull() {
    return kind == Kind.LEVEL || kind == Kind.CAUGHT;
  }

  /** How it is wired where nobody says otherwise: outputs high, contacts to ground. */
  public Wire standard() {
    return output()
        ? new Wire(line, false, Pull.OFF, 0)
        : new Wire(line, true, Pull.UP, standardMicros());
  }

  private int standardMicros() {
    return switch (kind) {
      case PRESS, EXTRA_PRESS -> PRESS_MICROS;
      case CAUGHT -> CAUGHT_MICROS;
      case OUTPUT, EXTRA, LEVEL, EDGES, READ_BACK -> 0;
    };
  }
}
