package trayward.controller.station;

import static trayward.controller.station.Entry.number;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.keep.UpkeepReport;

/** Input registers of the due dates of maintenance. */
public final class UpkeepRegisters {

  /** Address of the first. */
  public static final int BASE = 250;

  private static final int EACH = 8;

  /** How many there are. */
  public static final int WORDS = 2 + EACH * UpkeepItem.values().length;

  /** The day the controller's clock shows. */
  public static final Entry TODAY =
      number(
          BASE,
          Form.COUNT,
          "today",
          "d",
          "day the controller's clock shows, from 1970-01-01",
          m -> m.upkeep().today());

  private static final Map<UpkeepItem, Part> PARTS = parts();

  private UpkeepRegisters() {}

  /**
   * The registers of one part.
   *
   * @param last day it was last done; not valid where that is not known
   * @param due day it is due
   * @param hours hours of use since; not valid where none are counted
   * @param hoursDue hours of use at which it is due
   * @param overdue whether it is overdue
   */
  public record Part(Entry last, Entry due, Entry hours, Entry hoursDue, Entry overdue) {
    private List<Entry> all() {
      return List.of(last, due, hours, hoursDue, overdue);
    }
  }

  /** The registers of a part. */
  public static Part of(UpkeepItem item) {
    Part part = PARTS.get(item);
    if (part == null) {
      throw new IllegalArgumentException(item.name());
    }
    return part;
  }

  private static Map<UpkeepItem, Part> parts() {
    Map<UpkeepItem, Part> parts = new EnumMap<>(UpkeepItem.class);
    for (UpkeepItem item : UpkeepItem.values()) {
      parts.put(item, part(BASE + 2 + EACH * Codes.UPKEEP.code(item), item));
    }
    return parts;
  }

  private static Part part(int at, UpkeepItem item) {
    String name = item.path().replace('-', '_');
    return new Part(
        number(
            at,
            Form.COUNT,
            name + "_last",
            "d",
            item.words() + ": day it was last done, from 1970-01-01",
            m -> last(m.upkeep(), item)),
        number(
            at + 1,
            Form.COUNT,
            name + "_due",
            "d",
            item.words() + ": day it is due",
            m -> m.upkeep().due(item)),
        number(
            at + 2,
            Form.LONG_TENTHS,
            name + "_hours",
            "h",
            item.words() + ": hours of use since",
            m -> m.upkeep().hours(item)),
        number(
            at + 4,
            Form.LONG_TENTHS,
            name + "_hours_due",
            "h",
            item.words() + ": hours of use at which it is due",
            m -> m.upkeep().hoursDue(item)),
        number(
            at + 6,
            Form.COUNT,
            name + "_overdue",
            "",
            item.words() + ": 1 where it is overdue",
            m -> m.upkeep().overdue().contains(item) ? 1 : 0));
  }

  private static double last(UpkeepReport report, UpkeepItem item) {
    long day = report.upkeep().last(item);
    return day == 0 ? Double.NaN : day;
  }

  static List<Entry> all() {
    List<Entry> all = new ArrayList<>(List.of(TODAY));
    PARTS.values().forEach(part -> all.addAll(part.all()));
    return all;
  }
}
