package trayward.host.link;

import java.time.LocalDate;
import java.util.Optional;
import trayward.controller.app.TrayDesk;
import trayward.controller.regulate.Estimate;
import trayward.controller.regulate.HoldReach;
import trayward.controller.regulate.TrayLesson;
import trayward.controller.scan.TrayView;

/** Turns what the controller knows of its tray into what the host shows. Stateless. */
final class TrayViews {

  private TrayViews() {}

  static TrayKnownView of(TrayView tray, TrayDesk desk) {
    Optional<TrayLesson> lesson = tray.lesson();
    return new TrayKnownView(
        lesson.map(TrayLesson::words).orElse(""),
        lesson.map(TrayLesson::litres).orElse(Double.NaN),
        lesson.map(l -> Estimate.COVERAGE * l.litresDoubt()).orElse(Double.NaN),
        desk.known()
            .map(
                t ->
                    new TrayKnownView.Learned(
                        t.name(), LocalDate.ofEpochDay(t.epochDay()).toString(), t.measured()))
            .orElse(null),
        tray.highestHoldC(),
        tray.outOfReach() ? HoldReach.words(tray.highestHoldC()) : "");
  }
}
