package trayward.controller.keep;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * When each part was last looked after, and hours of use since (SR-23). A value; days count from
 * 1970-01-01 (UTC).
 *
 * @param lastDay day each item was last done
 * @param cartridgeS time in vapour since the cartridge was changed, s
 * @param fanS time the fan was commanded since its service, s
 */
public record Upkeep(Map<UpkeepItem, Long> lastDay, double cartridgeS, double fanS) {

  /** 2026-01-01, the date of this build: a clock that shows less is not set. */
  static final long BUILD_DAY = 20_454;

  /** 1970-01-01: for what nobody can tell. */
  private static final long UNKNOWN_DAY = 0;

  private static final double S_PER_H = 3600;

  /** Copies the days, so that nobody changes them. */
  public Upkeep {
    lastDay = Map.copyOf(lastDay);
  }

  private static Upkeep all(long day) {
    Map<UpkeepItem, Long> days = new EnumMap<>(UpkeepItem.class);
    for (UpkeepItem item : UpkeepItem.values()) {
      days.put(item, day);
    }
    return new Upkeep(days, 0, 0);
  }

  /** The first run: installing a breaker is testing it, so that all counts from today. */
  static Upkeep installed(long today) {
    return all(Math.max(BUILD_DAY, today));
  }

  /** Nothing is known, so that everything is due. */
  static Upkeep unknown() {
    return all(UNKNOWN_DAY);
  }

  /** Day an item was last done. */
  public long last(UpkeepItem item) {
    return Objects.requireNonNull(lastDay.get(item), item.path());
  }

  /** Whether a clock can be right: not before this build, nor before what is on record. */
  public boolean clockSet(long today) {
    return today >= BUILD_DAY && lastDay.values().stream().allMatch(day -> today >= day);
  }

  /** Day on which an item is due. */
  public long due(UpkeepItem item, UpkeepPlan plan) {
    return last(item) + plan.days(item);
  }

  /** Hours that the cartridge was in vapour. */
  public double cartridgeHours() {
    return cartridgeS / S_PER_H;
  }

  /** Hours that the fan ran. */
  public double fanHours() {
    return fanS / S_PER_H;
  }

  /** What is overdue on a day. */
  public Set<UpkeepItem> overdue(long today, UpkeepPlan plan) {
    EnumSet<UpkeepItem> overdue = EnumSet.noneOf(UpkeepItem.class);
    for (UpkeepItem item : UpkeepItem.values()) {
      if (today > due(item, plan)) {
        overdue.add(item);
      }
    }
    if (cartridgeHours() >= plan.cartridgeHours()) {
      overdue.add(UpkeepItem.CARTRIDGE);
    }
    return overdue;
  }

  /** An item was done today; its hours begin anew. */
  Upkeep done(UpkeepItem item, long today) {
    Map<UpkeepItem, Long> days = new EnumMap<>(lastDay);
    days.put(item, today);
    return switch (item) {
      case BREAKER_TEST, PROBE_CHECK -> new Upkeep(days, cartridgeS, fanS);
      case CARTRIDGE -> new Upkeep(days, 0, fanS);
      case FAN_SERVICE -> new Upkeep(days, cartridgeS, 0);
    };
  }

  /** Some monotonic time of use went by. */
  Upkeep used(double elapsedS, boolean vapour, boolean fan) {
    return new Upkeep(lastDay, cartridgeS + (vapour ? elapsedS : 0), fanS + (fan ? elapsedS : 0));
  }
}
