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

  /** Day on which an item is due. */
  public long due(UpkeepItem item) {
    return upkeep.due(item, plan);
  }
}
