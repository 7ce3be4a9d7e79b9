package trayward.controller.safety;

/** What one proof of moving air says in one scan. */
public enum Proof {
  /** Not configured. */
  NOT_FITTED,
  /** No sign of moving air. */
  ABSENT,
  /** A sign, outside of its limits: a fan too slow, too fast, or still spinning down. */
  UNSURE,
  /** Moving air, within its limits. */
  PRESENT;

  /** A tachometer's proof, SR-02: within [low, high] of rated; below {@code absent} it rests. */
  public static Proof ofTachometer(double rpm, double ratedRpm, Limits limits) {
    double share = rpm / ratedRpm;
    if (!(share > limits.get(Limit.TACH_ABSENT))) {
      return ABSENT;
    }
    boolean within = share >= limits.get(Limit.TACH_LOW) && share <= limits.get(Limit.TACH_HIGH);
    return within ? PRESENT : UNSURE;
  }

  /** Whether this proof does not stand in the way of counting the fan as running. */
  boolean proves() {
    return this == PRESENT || this == NOT_FITTED;
  }

  /** Whether this proof shows nothing. */
  boolean shows() {
    return this == PRESENT || this == UNSURE;
  }
}
