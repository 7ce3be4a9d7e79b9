package trayward.controller.safety;

/**
 * The right to close one relay alone in one scan of a purge, for the contact test of SR-26: no heat
 * comes of it while the other contact is open. Only {@link Interlock} can make one.
 */
public final class ContactPermit implements Permission {

  private final long scan;
  private final Relay relay;

  ContactPermit(long scan, Relay relay) {
    this.scan = scan;
    this.relay = relay;
  }

  /** Whether it lets this relay close in this scan. */
  public boolean lets(Relay which, long scanNumber) {
    return relay == which && scan == scanNumber;
  }
}
