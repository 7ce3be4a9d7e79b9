package trayward.controller.scan;

import java.util.EnumSet;
import trayward.controller.port.LineReadings;
import trayward.controller.safety.Request;

/** Buttons and pedal act when they go down, once. Scan thread only. */
final class Buttons {

  private LineReadings before = LineReadings.ABSENT;
  // A line already down at power-up is a stuck button, not a press.
  private boolean first = true;

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
}
