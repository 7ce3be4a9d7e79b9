package trayward.controller.regulate;

/** Watches what a {@link TimeProportioner} does to a contact. */
final class Relay {

  TimeProportioner pulses = TimeProportioner.START;
  double onS;
  double askedS;
  double shortestPulseS = Double.POSITIVE_INFINITY;
  double shortestPauseS = Double.POSITIVE_INFINITY;
  int mostClosures;
  private final double cycleS;
  private final double minPulseS;
  private double sinceS;
  private int closures;
  private boolean begun;
  private boolean changed;

  Relay(double cycleS, double minPulseS) {
    this.cycleS = cycleS;
    this.minPulseS = minPulseS;
  }

  /** One scan, {@code elapsedS} after the last: what was on until now is counted as given. */
  void scan(double duty, double elapsedS) {
    boolean was = pulses.on();
    if (begun) {
      askedS += duty * elapsedS;
      onS += was ? elapsedS : 0;
      sinceS += elapsedS;
    }
    pulses = pulses.next(duty, elapsedS, cycleS, minPulseS);
    begun = true;
    if (pulses.phaseS() == 0) {
      closures = 0;
    }
    if (pulses.on() != was) {
      closures += pulses.on() ? 1 : 0;
      mostClosures = Math.max(mostClosures, closures);
      judge(was);
      sinceS = 0;
      changed = true;
    }
  }

  private void judge(boolean was) {
    if (was) {
      shortestPulseS = Math.min(shortestPulseS, sinceS);
    } else if (changed) { // the rest before the first pulse is no pause
      shortestPauseS = Math.min(shortestPauseS, sinceS);
    }
  }
}
