package trayward.controller.safety;

import trayward.controller.quantity.Range;

/**
 * Every limit of the interlock: one row each, with its key in {@code [limits]}, unit, range,
 * default, requirement and reason. {@code hardware-notes/limits.md} is printed from this table.
 */
public enum Limit {
  PROVING_S(
      "proving_s", "SR-02", 5, 2, 30, "s", "A fan that starts and dies at once is not running."),
  NO_PROOF_S(
      "no_proof_s",
      "SR-02",
      30,
      15,
      120,
      "s",
      "A healthy fan spins up in a few seconds; the look of SR-03 comes out of this time too."),
  TACH_LOW(
      "tach_low", "SR-02", 0.70, 0.5, 0.95, "", "Slower than this the flow is below its plan."),
  TACH_HIGH(
      "tach_high", "SR-02", 1.30, 1.05, 2, "", "Faster means an unloaded wheel: a loose duct."),
  TACH_ABSENT(
      "tach_absent", "SR-03", 0.10, 0.02, 0.3, "", "A draught may turn a resting wheel slowly."),
  LOOK_EXTRA_S(
      "look_extra_s",
      "SR-03",
      2,
      1,
      5,
      "s",
      "Time beyond the spin-down to see every proof absent."),
  LOOK_MAX_S("look_max_s", "SR-03", 15, 5, 15, "s", "A hot bath must not wait longer for its fan."),
  PURGE_S(
      "purge_s",
      "SR-04",
      60,
      10,
      3600,
      "s",
      "Air changes of the room or hood before heat; the air planner computes it."),
  BREAK_S(
      "break_s",
      "SR-05",
      0.5,
      0.2,
      0.8,
      "s",
      "Longer than switch chatter, within the 1.0 s allowed."),
  BREAK_COUNT("break_count", "SR-05", 3, 2, 3, "", "As many breaks as this are no chatter."),
  BREAK_WINDOW_S(
      "break_window_s", "SR-05", 60, 30, 600, "s", "A loose contact shows within a minute."),
  BATH_HARD_C("bath_hard_c", "SR-06", 55, 30, 55, "°C", "Water of 55 °C scalds deeply in 30 s."),
  OVER_SET_K(
      "over_set_k",
      "SR-06",
      5,
      2,
      10,
      "K",
      "No regulator here overshoots by more than a tenth of it."),
  ARRIVED_K(
      "arrived_k", "SR-06", 1, 0.5, 2, "K", "Once this near, above set is no warm-up any more."),
  ABOVE_SET_K(
      "above_set_k", "SR-06", 0.5, 0.2, 2, "K", "Heat above set has no use; noise stays under it."),
  SET_MIN_C("set_min_c", "SR-06", 15, 10, 30, "°C", "Below, the bath would need cooling."),
  SET_MAX_C("set_max_c", "SR-06", 50, 20, 50, "°C", "Leaves 5 K to the hard limit."),
  PLATE_ASK_C(
      "plate_ask_c", "SR-07", 68, 40, 68, "°C", "Leaves room under the dry-tray trip at 72 °C."),
  PLATE_DRY_C(
      "plate_dry_c",
      "SR-07",
      72,
      45,
      72,
      "°C",
      "No wet tray reaches it under the regulator's ceiling."),
  PLATE_HARD_C("plate_hard_c", "SR-07", 75, 50, 75, "°C", "Burns on touch; softens trays."),
  PLATE_BLIND_W(
      "plate_blind_w",
      "SR-07",
      250,
      50,
      250,
      "W",
      "Without a plate probe more would run away unseen."),
  BAD_PROBE_S(
      "bad_probe_s",
      "SR-08",
      3,
      1,
      10,
      "s",
      "Rides out one bad reading of a probe read each second."),
  STALE_S("stale_s", "SR-08", 4, 2, 10, "s", "Three 12-bit probes on one bus take 2.25 s a round."),
  CONTACT_TEST_S(
      "contact_test_s",
      "SR-26",
      25,
      15,
      60,
      "s",
      "A welded contact warms the plate by more than 1 K and the bath by 0.25 K meanwhile."),
  READ_BACK_S(
      "read_back_s",
      "SR-11",
      0.5,
      0.2,
      2,
      "s",
      "A contactor moves within 0.1 s, and a line is read every 0.1 s."),
  NO_AIR_ALARM_S(
      "no_air_alarm_s",
      "SR-27",
      15,
      5,
      30,
      "s",
      "The look of SR-03 and the fan's spin-up over a warm bath are no alarm."),
  WARNING_CLEAR_S(
      "warning_clear_s",
      "SR-27",
      10,
      1,
      60,
      "s",
      "A condition that comes and goes is one alarm, not many."),
  RATE_K_PER_S(
      "rate_k_per_s", "SR-08", 8, 2, 20, "K/s", "A cold pour into a thin bath stays under 4 K/s."),
  DISAGREE_K(
      "disagree_k", "SR-09", 2, 1, 5, "K", "Two probes within their data sheet agree to 1 K."),
  DISAGREE_S("disagree_s", "SR-09", 60, 10, 300, "s", "A pour needs up to a minute to mix."),
  PRESENCE_MIN("presence_min", "SR-15", 45, 5, 90, "min", "Longer than the longest print."),
  PRESENCE_WARN_MIN(
      "presence_warn_min", "SR-15", 5, 1, 15, "min", "Time to finish what the hands are doing."),
  HOST_LOST_S("host_lost_s", "SR-16", 60, 5, 120, "s", "A host that restarts is back by then."),
  LATE_PERIODS(
      "late_periods", "SR-17", 2, 1, 5, "", "Two scans missed is no jitter of a busy computer."),
  LATE_TRIP_S("late_trip_s", "SR-17", 1, 0.5, 1, "s", "Heat must be off within 1.0 s of lost air."),
  WARM_C("warm_c", "SR-20", 30, 20, 35, "°C", "Above, the vapour of the bath wants moving air."),
  AFTER_RUN_S(
      "after_run_s",
      "SR-20",
      300,
      30,
      3600,
      "s",
      "Clears what the cooling bath gave off; see the planner."),
  READY_MIN("ready_min", "SR-13", 10, 1, 60, "min", "A run nobody heats in is a forgotten one."),
  STOP_HELD_S("stop_held_s", "SR-21", 5, 3, 10, "s", "Too long to be a slip of the hand."),
  LEVEL_LOW_SHARE(
      "level_low_share",
      "SR-28",
      0.15,
      0.05,
      0.3,
      "",
      "Share of the liquid missing that changes strength and time; under it lies a jug's error."),
  LEVEL_UNSURE_SHARE(
      "level_unsure_share",
      "SR-28",
      0.5,
      0.2,
      0.6,
      "",
      "With half of it gone a print is not covered and the plate is soon dry.");

  private final String key;
  private final String requirement;
  private final double standard;
  private final double min;
  private final double max;
  private final String unit;
  private final String reason;

  Limit(
      String key,
      String requirement,
      double standard,
      double min,
      double max,
      String unit,
      String reason) {
    this.key = key;
    this.requirement = requirement;
    this.standard = standard;
    this.min = min;
    this.max = max;
    this.unit = unit;
    this.reason = reason;
  }

  /** Key in the configuration's {@code [limits]} section. */
  public String key() {
    return key;
  }

  /** Id of the requirement the limit belongs to. */
  public String requirement() {
    return requirement;
  }

  /** Value where the configuration says nothing. */
  public double standard() {
    return standard;
  }

  /** Unit symbol; empty for a plain ratio. */
  public String unit() {
    return unit;
  }

  /** Accepted values with their unit. */
  public Range range() {
    return new Range(min, max, unit);
  }

  /** Why the default is what it is. */
  public String reason() {
    return reason;
  }
}
