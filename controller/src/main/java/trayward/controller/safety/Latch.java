package trayward.controller.safety;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import trayward.controller.event.TripCause;
import trayward.controller.keep.KeepRecord;

/**
 * What has tripped and not been reset. A value.
 *
 * @param causes every latched cause
 * @param firstOut the one that came first; never changes while latched
 * @param acknowledged a person has acknowledged it
 */
public record Latch(Set<TripCause> causes, Optional<TripCause> firstOut, boolean acknowledged) {

  /** Nothing latched. */
  static final Latch OPEN = new Latch(Set.of(), Optional.empty(), false);

  /** The latch as the durable record has it. */
  static Latch of(KeepRecord record) {
    return new Latch(record.latched(), record.firstOut(), record.acknowledged());
  }

  /** Whether anything holds. */
  public boolean holds() {
    return !causes.isEmpty();
  }

  /** With more causes; a cause that is new takes the acknowledgement back. */
  Latch with(Set<TripCause> more) {
    if (more.isEmpty() || causes.containsAll(more)) {
      return this;
    }
    EnumSet<TripCause> all = EnumSet.copyOf(more);
    all.addAll(causes);
    TripCause first = firstOut.orElseGet(() -> EnumSet.copyOf(more).iterator().next());
    return new Latch(Collections.unmodifiableSet(all), Optional.of(first), false);
  }

  Latch acknowledge() {
    return acknowledged || !holds() ? this : new Latch(causes, firstOut, true);
  }
}
