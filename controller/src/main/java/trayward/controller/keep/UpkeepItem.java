package trayward.controller.keep;

import java.util.Arrays;
import java.util.Optional;
import trayward.controller.quantity.Range;

/**
 * What is looked after by date (SR-23), with its interval: key in {@code [upkeep]}, default, range
 * and reason. {@code hardware-notes/upkeep.md} is printed from this table.
 */
public enum UpkeepItem {
  BREAKER_TEST(
      "ground-fault breaker test",
      "breaker_test_days",
      30,
      1,
      92,
      "Makers print monthly on the breaker: common practice. A stuck one looks like a good one."),
  CARTRIDGE(
      "respirator cartridge",
      "cartridge_days",
      182,
      7,
      365,
      "Six months once opened: common practice. What the respirator's maker says of its end rules."),
  PROBE_CHECK(
      "probe check",
      "probe_check_days",
      180,
      7,
      730,
      "Twice a year in melting ice and against a thermometer: common practice."),
  FAN_SERVICE(
      "fan service",
      "fan_service_days",
      365,
      30,
      1095,
      "Dust and fixer salts slow a wheel within a year or so: common practice.");

  /** Key of the cartridge's hours in {@code [upkeep]}. */
  public static final String CARTRIDGE_HOURS_KEY = "cartridge_hours";

  /** Hours in vapour that a cartridge may serve where its maker says nothing: common practice. */
  public static final double CARTRIDGE_HOURS = 40;

  /** From one session to what no cartridge lasts. */
  public static final Range CARTRIDGE_HOURS_RANGE = new Range(1, 200, "h");

  private final String words;
  private final String key;
  private final double standard;
  private final double min;
  private final double max;
  private final String reason;

  UpkeepItem(String words, String key, double standard, double min, double max, String reason) {
    this.words = words;
    this.key = key;
    this.standard = standard;
    this.min = min;
    this.max = max;
    this.reason = reason;
  }

  /** What it is, as a person says it. */
  public String words() {
    return words;
  }

  /** Its name in the interface's addresses, such as {@code breaker-test}. */
  public String path() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** The item of such a name. */
  public static Optional<UpkeepItem> of(String path) {
    return Arrays.stream(values()).filter(i -> i.path().equals(path)).findFirst();
  }

  /** Key of its interval in the configuration. */
  public String key() {
    return key;
  }

  /** Interval where the configuration says nothing, days. */
  public double standardDays() {
    return standard;
  }

  /** Intervals accepted. */
  public Range range() {
    return new Range(min, max, "days");
  }

  /** Why the interval is what it is. */
  public String reason() {
    return reason;
  }
}
