package trayward.host.report.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import trayward.host.air.Advice;
import trayward.host.air.Room;

/** The part of the air planner about times and flows. Stateless. */
final class AirPurge {

  /** Range of the settings purge_s and after_run_s, s. */
  private static final double MOST_SETTING_S = 3600;

  private AirPurge() {}

  /** Times of purge and after-run, and what to set. */
  static void say(PlanWords w, Room room, PlanAnswer a) {
    double minutes = room.purgeMinutes(w.number(AirPlan.REMOVAL));
    String share = Numbers.shown(w.number(AirPlan.REMOVAL)) + " %";
    a.number("purge_min", "purge that takes away " + share, minutes, "min");
    double perfect = minutes / w.number(AirPlan.MIXING);
    a.number(
        "purge_perfect_min", "  were it mixed perfectly, as in printed tables", perfect, "min");
    setting(a, "purge_s", minutes);
    if (!w.has(AirPlan.DOWN_TO)) {
      a.number("after_run_min", "after-run, once nothing more comes", minutes, "min");
      setting(a, "after_run_s", minutes);
    }
  }

  /** The setting of the same name, rounded up. */
  static void setting(PlanAnswer a, String key, double minutes) {
    double seconds = Math.ceil(minutes * 60);
    a.number(key, "  as a setting, " + key, seconds, "s");
    if (seconds > MOST_SETTING_S) {
      a.caution(
          key
              + " can be set to "
              + Numbers.plain(MOST_SETTING_S)
              + " s at most: run the fan by hand for the rest, or take a stronger one. A hood around"
              + " the tray has a volume of its own.");
    }
  }

  /** What others asked of darkrooms. */
  static void advice(PlanWords w, PlanAnswer a) {
    a.heading("what was once asked of darkrooms, as a flow in this room");
    for (Advice each : Advice.values()) {
      double flow = each.changesPerHour() * w.number(AirPlan.VOLUME);
      Map<String, Object> row = new LinkedHashMap<>();
      row.put("air_changes_per_h", Numbers.rounded(each.changesPerHour()));
      row.put("flow_m3_per_h", Numbers.rounded(flow));
      row.put("source", each.source());
      String changes = Numbers.shown(each.changesPerHour());
      a.row(
          "advice",
          row,
          changes + " air changes, " + Numbers.shown(flow) + " m³/h (" + each.source() + ")");
    }
  }
}
