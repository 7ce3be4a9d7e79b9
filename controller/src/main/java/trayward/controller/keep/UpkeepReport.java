package trayward.controller.keep;

import java.util.Set;

/**
 * The upkeep as it stands on a day (SR-23). Immutable.
 *
 * @param upkeep what is on record
 * @param plan the intervals
 * @param today the day the clock shows, from 1970-01-01
 * @param clockSet whether that can be
 * @param overdue what is overdue by it
 */
public record UpkeepReport(
    Upkeep upkeep, UpkeepPlan plan, long today, boolean clockSet, Set<UpkeepItem> overdue) {

  /** Copies what is overdue. */
  public UpkeepReport {
    overdue = Set.copyOf(overdue);
  }

  /** Hours of use of an item since it was done; NaN where none are counted. */
  public double hours(UpkeepItem item) {
    return switch (item) {
      case CARTRIDGE -> upkeep.cartridgeHours();
      case FAN_SERVICE -> upkeep.fanHours();
      case BREAKER_TEST, PROBE_CHECK -> Double.NaN;
    };
  }

  /** Hours of use at which it is due; NaN where dates alone count. */
  public double hoursDue(UpkeepItem item) {
    return item == UpkeepItem.CARTRIDGE ? plan.cartridgeHours() : Double.NaN;
  }

  /** Day on which an item is due. */
  public long due(UpkeepItem item) {
    return upkeep.due(item, plan);
  }
}
