package trayward.host.report.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import trayward.host.air.AirLimit;
import trayward.host.air.Gas;
import trayward.host.air.Room;
import trayward.host.air.Spell;
import trayward.host.air.VapourBound;

/** The part of the air planner about what is breathed. Stateless. */
final class AirVapours {

  private AirVapours() {}

  /** Concentrations of a source, beside every limit that is known. */
  static void say(PlanWords w, Room room, double mgPerH, PlanAnswer a) {
    Gas gas = gas(w);
    double peak = room.mgPerM3After(w.number(AirPlan.MINUTES), mgPerH, 0);
    // The whole stay counts at its highest: above the true mean, never below.
    double hours = w.number(AirPlan.MINUTES) / 60;
    double day = peak * hours / Spell.DAY_H;
    String what = w.has(AirPlan.FORMALDEHYDE) ? "upper bound, to a factor of two" : "as told";
    a.number("source_mg_per_h", gas.word() + " given off, " + what, mgPerH, "mg/h");
    if (w.has(AirPlan.FORMALDEHYDE)) {
      surface(w, a);
    }
    a.number("steady_mg_per_m3", "in the long run, estimate", room.steadyMgPerM3(mgPerH), "mg/m³");
    a.quiet("steady_ppm", gas.ppm(room.steadyMgPerM3(mgPerH)));
    a.number("peak_mg_per_m3", "highest while you stay, estimate", peak, "mg/m³");
    a.number("peak_ppm", "  the same", gas.ppm(peak), "ppm");
    a.number("day_mean_ppm", "mean of the day over eight hours, estimate", gas.ppm(day), "ppm");
    if (w.has(AirPlan.DOWN_TO)) {
      double to = w.number(AirPlan.DOWN_TO);
      double minutes = room.minutesBetween(room.steadyMgPerM3(mgPerH), to);
      a.number(
          "after_run_min",
          "after-run to " + Numbers.shown(to) + " mg/m³, once nothing more comes",
          minutes,
          "min");
      AirPurge.setting(a, "after_run_s", minutes);
    }
    limits(gas, gas.ppm(peak), gas.ppm(day), a);
  }

  private static Gas gas(PlanWords w) {
    return Stream.of(Gas.values())
        .filter(g -> g.word().equals(w.text(AirPlan.GAS)))
        .findFirst()
        .orElseThrow(); // a choice was checked against the same list
  }

  private static void surface(PlanWords w, PlanAnswer a) {
    VapourBound bound =
        new VapourBound(
            w.number(AirPlan.FORMALDEHYDE), w.number(AirPlan.BATH), TrayOptions.evaporation(w, 1));
    a.number("surface_ppm", "right over the bath, upper bound", bound.surfacePpm(), "ppm");
    a.number("surface_mg_per_m3", "  the same", bound.surfaceMgPerM3(), "mg/m³");
    a.caution(
        "All formaldehyde is taken as free. Sulfite binds some of it; nobody at a tray knows how"
            + " much.");
  }

  private static void limits(Gas gas, double peakPpm, double dayPpm, PlanAnswer a) {
    a.heading("beside the limits others have set");
    for (AirLimit limit : AirLimit.values()) {
      if (limit.gas() != gas) {
        continue;
      }
      double estimate = limit.minutes() == 480 ? dayPpm : peakPpm;
      double times = estimate / limit.ppm();
      Map<String, Object> row = new LinkedHashMap<>();
      row.put("limit_ppm", Numbers.rounded(limit.ppm()));
      row.put("limit_mg_per_m3", Numbers.rounded(limit.mgPerM3()));
      row.put("minutes", limit.minutes());
      row.put("source", limit.source());
      row.put("estimate_ppm", Numbers.rounded(estimate));
      row.put("times_limit", Numbers.rounded(times));
      String over = limit.minutes() == 0 ? "at any moment" : "over " + limit.minutes() + " min";
      a.row(
          "limits",
          row,
          Numbers.shown(limit.ppm())
              + " ppm "
              + over
              + " ("
              + limit.source()
              + "): estimate is "
              + Numbers.shown(times)
              + " of it");
    }
  }

  /** What anybody must know who acts on this planner. */
  static PlanAnswer cautions(PlanAnswer a) {
    return a.caution(
            "Estimates for a room mixed as told. Your face over the tray breathes more than the"
                + " room's mean; below a limit does not mean without harm.")
        .caution(
            "Ventilate whatever this says. A filter mask is no interlock and no replacement for"
                + " extraction: cartridges must match the vapour and run out without notice.")
        .caution(
            "Give the air an inlet, or it comes down the chimney of a boiler or stove with its"
                + " exhaust.");
  }
}
