package trayward.controller.keep;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import trayward.controller.event.TripCause;

/**
 * What must survive power loss: the latch, and whether heat was in progress. Immutable.
 *
 * @param latched every cause that has tripped and not been reset; empty when not locked out
 * @param firstOut the cause that came first; present exactly when {@code latched} is not empty
 * @param acknowledged whether a person has acknowledged the latch
 * @param heatInProgress whether a run with heat had begun and its after-run had not ended
 */
public record KeepRecord(
    Set<TripCause> latched,
    Optional<TripCause> firstOut,
    boolean acknowledged,
    boolean heatInProgress) {

  /** Nothing latched, no heat. */
  public static final KeepRecord CLEAN = new KeepRecord(Set.of(), Optional.empty(), false, false);

  /** Copies the set and refuses a first-out that is not among the latched causes. */
  public KeepRecord {
    EnumSet<TripCause> copy = EnumSet.noneOf(TripCause.class);
    copy.addAll(latched);
    latched = Collections.unmodifiableSet(copy);
    if (firstOut.isPresent() == latched.isEmpty() || !firstOut.map(copy::contains).orElse(true)) {
      throw new IllegalArgumentException("first-out must be one of the latched causes");
    }
  }
}
