package trayward.controller.regulate;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * A plant of one or two lags and a delay, steered by a relay: solved exactly from event to event,
 * each switch found by halving. After a while it swings for ever.
 */
final class RelaySwing {

  private record Switch(double atS, double to) {}

  /** Steps in a delay: parabola between them, so an extreme is found to some 1e-8. */
  private static final int STEPS = 2000;

  private final double[] lagsS;
  private final double[] shares;
  private final double delayS;
  private final double hysteresis;
  private final Deque<Switch> onTheWay = new ArrayDeque<>();
  private double[] x;
  private double nowS;
  private double relay;
  private double felt;
  private double highest = Double.NEGATIVE_INFINITY;
  private double lowest = Double.POSITIVE_INFINITY;
  private double risingAtS = Double.NaN;

  /** What it settled to. */
  double periodS = Double.NaN;

  double swing = Double.NaN;

  /** exp(-delay s)/((T1 s + 1)(T2 s + 1)), a relay of plus and minus 1. */
  RelaySwing(double delayS, double hysteresis, double... lagsS) {
    this.delayS = delayS;
    this.hysteresis = hysteresis;
    this.lagsS = lagsS;
    this.x = new double[lagsS.length];
    this.shares =
        lagsS.length == 1
            ? new double[] {1}
            : new double[] {lagsS[0] / (lagsS[0] - lagsS[1]), lagsS[1] / (lagsS[1] - lagsS[0])};
    turn(1);
  }

  RelaySwing run(double untilS) {
    while (nowS < untilS) {
      double nextS = nowS + delayS / STEPS;
      Switch head = onTheWay.peek();
      boolean arrives = head != null && head.atS <= nextS;
      double toS = arrives && head != null ? head.atS : nextS;
      if (pastThreshold(after(toS - nowS))) {
        go(crossing(toS - nowS));
        turn(-relay);
      } else {
        go(toS - nowS);
        felt = arrives && head != null ? onTheWay.remove().to : felt;
      }
    }
    return this;
  }

  private void turn(double to) {
    relay = to;
    onTheWay.add(new Switch(nowS + delayS, to));
    if (to > 0) {
      periodS = nowS - risingAtS;
      swing = (highest - lowest) / 2;
      risingAtS = nowS;
      highest = Double.NEGATIVE_INFINITY;
      lowest = Double.POSITIVE_INFINITY;
    }
  }

  private boolean pastThreshold(double[] state) {
    return relay * output(state) > hysteresis;
  }

  private double crossing(double withinS) {
    double low = 0;
    double high = withinS;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (pastThreshold(after(middle))) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }

  private void go(double seconds) {
    x = after(seconds);
    nowS += seconds;
    highest = Math.max(highest, output(x));
    lowest = Math.min(lowest, output(x));
  }

  private double[] after(double seconds) {
    double[] next = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      next[i] = felt + (x[i] - felt) * Math.exp(-seconds / lagsS[i]);
    }
    return next;
  }

  private double output(double[] state) {
    double y = 0;
    for (int i = 0; i < state.length; i++) {
      y += shares[i] * state[i];
    }
    return y;
  }
}
