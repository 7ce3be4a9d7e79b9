package trayward.host.link;

import java.time.LocalDate;
import java.util.Arrays;
import trayward.controller.keep.UpkeepDesk;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.keep.UpkeepReport;

/** Turns the controller's due dates into what the host shows. Stateless. */
final class UpkeepViews {

  private UpkeepViews() {}

  static UpkeepView of(UpkeepDesk desk) {
    UpkeepReport report = desk.report();
    return new UpkeepView(
        LocalDate.ofEpochDay(report.today()).toString(),
        report.clockSet(),
        desk.startUnconfirmed(),
        Arrays.stream(UpkeepItem.values()).map(item -> item(report, item)).toList());
  }

  private static UpkeepView.Item item(UpkeepReport report, UpkeepItem item) {
    long last = report.upkeep().last(item);
    return new UpkeepView.Item(
        item.path(),
        item.words(),
        last == 0 ? "" : LocalDate.ofEpochDay(last).toString(),
        LocalDate.ofEpochDay(report.due(item)).toString(),
        report.due(item) - report.today(),
        report.hours(item),
        report.hoursDue(item),
        report.overdue().contains(item),
        item.reason());
  }
}
