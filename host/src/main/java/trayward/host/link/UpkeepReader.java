package trayward.host.link;

import java.util.ArrayList;
import java.util.List;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.station.Block;
import trayward.controller.station.TrayRegisters;
import trayward.controller.station.UpkeepRegisters;

/** Turns registers into the due dates of maintenance. Pure. */
final class UpkeepReader {

  private UpkeepReader() {}

  static UpkeepView upkeep(Block b, Block texts, boolean clockSet) {
    double today = UpkeepRegisters.TODAY.number(b);
    List<UpkeepView.Item> items = new ArrayList<>();
    for (UpkeepItem item : UpkeepItem.values()) {
      items.add(item(b, item, today));
    }
    return new UpkeepView(
        StatusReader.date(today), clockSet, TrayRegisters.START_UNCONFIRMED.text(texts), items);
  }

  private static UpkeepView.Item item(Block b, UpkeepItem item, double today) {
    UpkeepRegisters.Part part = UpkeepRegisters.of(item);
    double due = part.due().number(b);
    return new UpkeepView.Item(
        item.path(),
        item.words(),
        StatusReader.date(part.last().number(b)),
        StatusReader.date(due),
        (long) (due - today),
        part.hours().number(b),
        part.hoursDue().number(b),
        part.overdue().number(b) == 1,
        item.reason());
  }
}
