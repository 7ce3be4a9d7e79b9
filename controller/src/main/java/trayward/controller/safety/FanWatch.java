package trayward.controller.safety;

import trayward.controller.quantity.Ages;

/**
 * Whether each proof has been seen absent since the fan was last commanded off (SR-03). A value.
 *
 * <p>Stricter than "seen once": after the look, a proof that shows again without a commanded fan is
 * no longer clear, so that a switch which sticks while the fan rests is caught at the next start.
 *
 * @param commanded the fan as commanded in the last scan
 * @param offMs how long it has been commanded off, ms
 * @param airflowClear the airflow switch has been seen absent
 * @param tachometerClear the tachometer has been seen absent
 */
public record FanWatch(
    boolean commanded, int offMs, boolean airflowClear, boolean tachometerClear) {

  /** Power-up: off, nothing seen yet. */
  static final FanWatch POWER_UP = new FanWatch(false, 0, false, false);

  /** What this scan's inputs show under the command of the last scan. */
  FanWatch next(InterlockInputs in, int lookMs) {
    if (commanded) {
      return this;
    }
    int off = Ages.older(offMs, in.elapsedMs());
    boolean looked = off >= lookMs;
    return new FanWatch(
        false,
        off,
        clear(in.airflow(), airflowClear, looked),
        clear(in.tachometer(), tachometerClear, looked));
  }

  private static boolean clear(Proof proof, boolean before, boolean looked) {
    if (!proof.shows()) {
      return true;
    }
    // While the wheel may still be spinning down a signal proves nothing either way.
    return before && !looked;
  }

  /** The fan as commanded now; commanding it off begins a new look. */
  FanWatch command(boolean on) {
    if (on == commanded) {
      return this;
    }
    return on
        ? new FanWatch(true, offMs, airflowClear, tachometerClear)
        : new FanWatch(false, 0, false, false);
  }

  /** Whether the look is over: long enough off to have spun down. */
  boolean looked(int lookMs) {
    return commanded || offMs >= lookMs;
  }

  /** Every proof has been seen absent. */
  public boolean clear() {
    return airflowClear && tachometerClear;
  }
}
