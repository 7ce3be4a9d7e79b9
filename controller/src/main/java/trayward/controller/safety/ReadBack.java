package trayward.controller.safety;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import trayward.controller.event.TripCause;
import trayward.controller.port.Contact;
import trayward.controller.quantity.Ages;

/**
 * Read-back of both contacts against their commands (SR-11), where such lines are wired. A value.
 *
 * @param heaterStuckMs how long the heater contact has been closed under an open command, ms
 * @param safetyStuckMs the same of the safety contact
 * @param heaterOpenMs how long the heater contact has been open under a closed command, ms
 * @param safetyOpenMs the same of the safety contact
 * @param limitMs longer than a healthy contact and its line take, ms
 */
public record ReadBack(
    int heaterStuckMs, int safetyStuckMs, int heaterOpenMs, int safetyOpenMs, int limitMs) {

  /** Nothing seen yet. */
  public static ReadBack start(Limits limits) {
    return new ReadBack(0, 0, 0, 0, limits.ms(Limit.READ_BACK_S));
  }

  /**
   * After one scan.
   *
   * @param elapsedMs time since the scan before, ms
   * @param heater the heater contact as read
   * @param heaterCommanded the heater relay as commanded since the scan before
   * @param safety the safety contact as read
   * @param safetyCommanded the safety relay as commanded since the scan before
   */
  public ReadBack next(
      int elapsedMs,
      Contact heater,
      boolean heaterCommanded,
      Contact safety,
      boolean safetyCommanded) {
    return new ReadBack(
        Ages.whileTrue(stuck(heater, heaterCommanded), heaterStuckMs, elapsedMs),
        Ages.whileTrue(stuck(safety, safetyCommanded), safetyStuckMs, elapsedMs),
        Ages.whileTrue(open(heater, heaterCommanded), heaterOpenMs, elapsedMs),
        Ages.whileTrue(open(safety, safetyCommanded), safetyOpenMs, elapsedMs),
        limitMs);
  }

  private static boolean stuck(Contact contact, boolean commanded) {
    return contact == Contact.CLOSED && !commanded;
  }

  private static boolean open(Contact contact, boolean commanded) {
    return contact == Contact.OPEN && commanded;
  }

  /** A contact that stays closed, and which. */
  public Optional<Relay> welded() {
    if (safetyStuckMs >= limitMs) {
      return Optional.of(Relay.SAFETY);
    }
    return heaterStuckMs >= limitMs ? Optional.of(Relay.HEATER) : Optional.empty();
  }

  /** A contact that does not close, and which. */
  public Optional<Relay> notClosing() {
    if (safetyOpenMs >= limitMs) {
      return Optional.of(Relay.SAFETY);
    }
    return heaterOpenMs >= limitMs ? Optional.of(Relay.HEATER) : Optional.empty();
  }

  /** What the interlock should know. */
  public Set<TripCause> findings() {
    boolean stuck = welded().isPresent();
    if (!notClosing().isPresent()) {
      return stuck ? Set.of(TripCause.RELAY_STUCK) : Set.of();
    }
    return stuck
        ? EnumSet.of(TripCause.RELAY_STUCK, TripCause.HEAT_NOT_ARRIVING)
        : Set.of(TripCause.HEAT_NOT_ARRIVING);
  }
}
