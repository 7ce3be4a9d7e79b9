package trayward.controller.keep;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import trayward.controller.event.TripCause;

/**
 * What must survive power loss: the latch, whether heat was in progress, and the wear of the
 * relays. Immutable.
 *
 * @param latched every cause that has tripped and not been reset; empty when not locked out
 * @param firstOut the cause that came first; present exactly when {@code latched} is not empty
 * @param acknowledged whether a person has acknowledged the latch
 * @param heatInProgress whether a run with heat had begun and its after-run had not ended
 * @param wear closings of both relays
 */
public record KeepRecord(
    Set<TripCause> latched,
    Optional<TripCause> firstOut,
    boolean acknowledged,
    boolean heatInProgress,
    RelayWear wear) {

  /** Nothing latched, no heat. */
  public static final KeepRecord CLEAN = new KeepRecord(Set.of(), Optional.empty(), false, false);

  /** A record with new relays. */
  public KeepRecord(
      Set<TripCause> latched,
      Optional<TripCause> firstOut,
      boolean acknowledged,
      boolean heatInProgress) {
    this(latched, firstOut, acknowledged, heatInProgress, RelayWear.NONE);
  }

  /** The same with relays worn so far. */
  public KeepRecord worn(RelayWear now) {
    return now.equals(wear)
        ? this
        : new KeepRecord(latched, firstOut, acknowledged, heatInProgress, now);
  }

  /** Copies the set and refuses a first-out that is not among the latched causes. */
  public KeepRecord {
    latched = latched.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(latched));
    boolean right = firstOut.isPresent() ? latched.contains(firstOut.get()) : latched.isEmpty();
    if (!right) {
      throw new IllegalArgumentException("first-out must be one of the latched causes");
    }
  }
}
