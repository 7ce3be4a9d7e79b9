package trayward.controller.safety;

import trayward.controller.quantity.Ages;

/**
 * The stop button held in lockout turns the fan off (SR-21: fire, seized motor). A value.
 *
 * <p>Only a press that was seen to begin in lockout counts, and only while the inputs answer: a
 * wire already broken, or an input board gone dead, must not turn off the fan over a hot bath.
 *
 * @param seenReleased the circuit has been seen whole in this lockout
 * @param heldMs how long it has been open since, ms
 * @param fanStopped held long enough: the fan stays off until the reset
 */
public record StopHold(boolean seenReleased, int heldMs, boolean fanStopped) {

  static final StopHold RELEASED = new StopHold(false, 0, false);

  StopHold next(InterlockInputs in, State state, int limitMs) {
    if (state != State.LOCKOUT) {
      return RELEASED;
    }
    if (!in.linesPresent()) {
      return new StopHold(false, 0, fanStopped);
    }
    boolean held = seenReleased && !in.stopCircuitClosed();
    int age = Ages.whileTrue(held, heldMs, in.elapsedMs());
    return new StopHold(seenReleased || in.stopCircuitClosed(), age, fanStopped || age >= limitMs);
  }
}
