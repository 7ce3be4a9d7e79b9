package trayward.controller.safety;

/**
 * The right to close the heater relay in one scan. Only {@link Interlock} can make one: the
 * constructor is visible in this package alone, and a test holds that nothing else here calls it.
 */
public final class HeaterPermit implements Permission {

  private final long scan;

  HeaterPermit(long scan) {
    this.scan = scan;
  }

  /** Whether it was minted for this scan; a permit kept from an earlier one is worth nothing. */
  public boolean isFor(long scanNumber) {
    return scan == scanNumber;
  }
}
