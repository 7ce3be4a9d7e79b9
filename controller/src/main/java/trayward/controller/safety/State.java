package trayward.controller.safety;

/** States of the interlock, in the words of the combustion-safety trade. Codes never change. */
public enum State {
  /** At rest. */
  OFF(0),
  /** The fan is commanded on and every proof is awaited. */
  PROVING(1),
  /** Air is proven; the room is cleared before heat. */
  PURGING(2),
  /** Purged; heat withheld. */
  READY(3),
  /** Heat permitted, bath more than 0.5 K below set. */
  HEATING(4),
  /** Heat permitted as needed. */
  HOLDING(5),
  /** No more heat; the fan runs until the bath is cool and the air cleared. */
  AFTER_RUN(6),
  /** Tripped: stays until cause clear, acknowledged and reset by hand. */
  LOCKOUT(7);

  private final int code;

  State(int code) {
    this.code = code;
  }

  /** Number in the register map. */
  public int code() {
    return code;
  }

  /** READY, HEATING or HOLDING: purged, and heat possible. */
  public boolean purged() {
    return this == READY || this == HEATING || this == HOLDING;
  }

  /** Between an accepted start and the end of heat. */
  public boolean inRun() {
    return this == PROVING || this == PURGING || purged();
  }
}
