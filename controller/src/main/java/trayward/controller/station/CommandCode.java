package trayward.controller.station;

import java.util.Arrays;
import java.util.Optional;

/** What a host may ask, by the code it writes. Codes never change. */
public enum CommandCode {
  /** Heat off; never refused. */
  STOP(1, "heat off", "–"),
  /** Begin proving. */
  START(2, "begin proving", "–"),
  /** The alarm has been seen. */
  ACKNOWLEDGE(3, "the alarm has been seen", "–"),
  /** Leave the lockout. */
  RESET(4, "leave the lockout, where the host is declared to stand at the tray", "–"),
  /** Somebody is here. */
  PRESENCE(5, "somebody is here", "–"),
  /** Set temperature. */
  SET_TEMPERATURE(6, "new set temperature", "hundredths of °C, signed"),
  /** Water or developer was poured in. */
  TOP_UP(7, "so much was poured in", "mL"),
  /** The tray holds so much. */
  LEVEL_HOLDS(8, "a person looked: the tray holds so much", "mL"),
  /** The tray is as full as was said. */
  LEVEL_AS_SAID(9, "a person looked: the tray is as full as was said", "–"),
  /** A start that was confirmed. */
  START_CONFIRMED(10, "begin proving, although something is overdue", "–"),
  /** A part was looked after. */
  UPKEEP_DONE(
      11,
      "looked after today",
      "0 ground-fault breaker test, 1 respirator cartridge, 2 probe check, 3 fan service"),
  /** A probe hangs in melting ice. */
  CALIBRATE_ICE(12, "a probe hangs in melting ice", "0 bath, 1 second bath, 2 plate"),
  /** A probe hangs beside a thermometer. */
  CALIBRATE_REFERENCE(
      13,
      "a probe hangs beside a thermometer; more_1: what it shows, hundredths of °C; more_2: its"
          + " uncertainty, k = 2, thousandths of a kelvin",
      "0 bath, 1 second bath, 2 plate"),
  /** What is known of a probe is forgotten. */
  FORGET_CALIBRATION(14, "a probe counts as bought", "0 bath, 1 second bath, 2 plate"),
  /** The warm-up is done with a measured litre. */
  CALIBRATE_TRAY(15, "the warm-up just learned, or the next, is done with exactly so much", "mL"),
  /** Buzzer and lamp for a moment. */
  CALL(
      16,
      "buzzer and lamp for a moment, below every alarm; nobody's presence",
      "0 watch now (10 s), 1 marked, 2 taken back"),
  /** One alarm is silent for a while. */
  SILENCE(17, "the buzzer leaves out one alarm for 2 min; the lamp does not", "its cause");

  private final int code;
  private final String meaning;
  private final String argument;

  CommandCode(int code, String meaning, String argument) {
    this.code = code;
    this.meaning = meaning;
    this.argument = argument;
  }

  /** The number that is written. */
  public int code() {
    return code;
  }

  /** What it does. */
  public String meaning() {
    return meaning;
  }

  /** What its argument is. */
  public String argument() {
    return argument;
  }

  static Optional<CommandCode> of(int code) {
    return Arrays.stream(values()).filter(c -> c.code == code).findFirst();
  }
}
