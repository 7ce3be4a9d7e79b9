package trayward.host.app;

import java.util.Optional;
import java.util.function.Consumer;
import trayward.host.forecast.Forecast;
import trayward.host.link.Call;
import trayward.host.web.Outlook;

/**
 * Calls to the sheet once its window opens: once for each print and moment, by buzzer and lamp. One
 * thread.
 */
final class WatchCaller {

  private final Consumer<Call> tray;
  private String called = "";

  WatchCaller(Consumer<Call> tray) {
    this.tray = tray;
  }

  /** The forecast as it is now, about once a second. */
  void follow(Optional<Outlook> outlook) {
    String open = outlook.map(WatchCaller::open).orElse("");
    if (!open.isEmpty() && !open.equals(called)) {
      tray.accept(Call.WATCH_NOW);
    }
    // what closes and opens again, after a mark was taken back, is called again
    called = open;
  }

  /** Print and moment of the open window; empty where none is. */
  private static String open(Outlook outlook) {
    return outlook.print().isPresent()
            && outlook.next() instanceof Forecast.Window window
            && window.open()
        ? outlook.print().get() + " " + window.moment()
        : "";
  }
}
