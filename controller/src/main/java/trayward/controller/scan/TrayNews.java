package trayward.controller.scan;

import java.util.Locale;
import java.util.Optional;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.regulate.FitResult;
import trayward.controller.regulate.HoldReach;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayLesson;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.State;

/**
 * Tells what a warm-up has shown, and a set temperature the heater cannot hold before anybody waits
 * for it: at a start, at a new set temperature, and when the tray is known better. Scan thread
 * only.
 */
final class TrayNews {

  /** A reach this much better takes a warning back, K: it moves a little with each fit. */
  private static final double BACK_K = 0.5;

  /** A warm-up of so many seconds knows its losses better than a declaration. */
  private static final int TELLING_S = 600;

  private final EventBox events;
  private final RoomModel room;
  private Optional<TrayLesson> lesson = Optional.empty();
  private double highestC;
  private double setC = Double.NaN;
  private boolean outOfReach;
  private boolean resting = true;

  TrayNews(ScanSettings settings, EventBox events) {
    this.events = events;
    this.room = settings.room();
    this.highestC = HoldReach.highestC(settings.believed(), room);
  }

  TrayView next(long nowNanos, Optional<TrayLesson> now, double newSetC, State state) {
    if (found(now) != found(lesson)) {
      lesson = now;
      now.ifPresent(l -> learned(nowNanos, l));
    }
    boolean out = newSetC > highestC - (outOfReach && newSetC == setC ? BACK_K : 0);
    boolean rests = state == State.OFF || state == State.AFTER_RUN || state == State.LOCKOUT;
    boolean started = resting && !rests;
    // A set temperature of a start or a person's is told each time, a reach that fell short once.
    if (out && (!outOfReach || started || newSetC != setC)) {
      put(nowNanos, "HEATER_TOO_SMALL", HoldReach.words(highestC));
    }
    outOfReach = out;
    setC = newSetC;
    resting = rests;
    return new TrayView(lesson, highestC, out);
  }

  private static Object found(Optional<TrayLesson> of) {
    return of.<Object>map(TrayLesson::found).orElse(of);
  }

  private void learned(long nowNanos, TrayLesson l) {
    FitResult found = l.found();
    if (l.complete() || l.seconds() >= TELLING_S) {
      TrayModel model = found.belief().model();
      highestC = HoldReach.highestC(model, room);
    }
    if (l.complete()) {
      put(
          nowNanos,
          "LEARNED",
          String.format(
              Locale.ROOT,
              "%s; litres seen %.2f, uncertainty %.2f (k = 2)",
              l.words(),
              l.litres(),
              2 * l.litresDoubt()));
    }
  }

  private void put(long nowNanos, String subject, String detail) {
    events.put(new TrayEvent(nowNanos, EventKind.TRAY, subject, detail));
  }
}
