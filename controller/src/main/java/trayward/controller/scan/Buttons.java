package trayward.controller.scan;

import java.util.EnumSet;
import trayward.controller.port.LineReadings;
import trayward.controller.safety.Request;

/**
 * Buttons and pedal act when they go down, once; a pedal kept down is a second thing, once. Scan
 * thread only.
 */
final class Buttons {

  /** A foot that means a press is off the pedal sooner. */
  static final long LONG_NANOS = 1_000_000_000L;

  private LineReadings before = LineReadings.ABSENT;
  // A line already down at power-up is a stuck button, not a press.
  private boolean first = true;
  private boolean mayGrowLong;
  private long downNanos;

  /** Adds what was pressed since the last scan; returns whether the pedal was. */
  boolean pressed(LineReadings now, EnumSet<Request> requests) {
    boolean listen = !first && now.present();
    if (listen && now.resetButton() && !before.resetButton()) {
      requests.add(Request.RESET);
    }
    if (listen && now.presenceButton() && !before.presenceButton()) {
      requests.add(Request.PRESENCE);
    }
    boolean pedal = listen && now.pedal() && !before.pedal();
    if (pedal) {
      requests.add(Request.PRESENCE);
    }
    first = !now.present();
    before = now;
    return pedal;
  }

  /**
   * Whether a press of the pedal has become a long one in this scan.
   *
   * @param pressed whether the press began in this scan
   * @param nowNanos monotonic time of the scan, nanoseconds
   */
  boolean grownLong(LineReadings now, boolean pressed, long nowNanos) {
    if (pressed) {
      downNanos = nowNanos;
      mayGrowLong = true;
    }
    mayGrowLong &= now.present() && now.pedal();
    boolean grown = mayGrowLong && nowNanos - downNanos >= LONG_NANOS;
    mayGrowLong &= !grown;
    return grown;
  }
}
