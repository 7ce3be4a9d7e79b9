package trayward.host.report.plan;

import static trayward.host.report.plan.PlanOption.flag;
import static trayward.host.report.plan.PlanOption.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trayward.host.bath.Checked;
import trayward.host.heat.FreeSurface;
import trayward.host.heat.HeatedTray;
import trayward.host.heat.WarmUp;
import trayward.host.heat.Water;

/** What a tray loses, what holds it, how long it warms up and what it evaporates. */
final class HeatPlan implements Planner {

  static final PlanOption SET = number("set", "temperature to hold", "°C", 15, 60).or(40);
  static final PlanOption START =
      number("start", "bath at the beginning, else the room", "°C", 0, 60);
  static final PlanOption COVER = flag("cover", "the tray is covered: nothing evaporates");
  static final PlanOption WITHIN =
      number("within", "time in which it shall be warm: how large a heater", "min", 1, 360);
  static final PlanOption POUR = number("pour", "liquid poured into the hold", "L", 0.01, 5);
  static final PlanOption POUR_AT = number("pour_at", "its temperature, else 20", "°C", 0, 60);

  /** Largest heater looked for, W: what a tray's plate is made for. */
  private static final double MOST_W = 2000;

  @Override
  public String name() {
    return "heat";
  }

  @Override
  public String description() {
    return "Watts a tray loses, heater size, warm-up time, water that evaporates, cover or none.";
  }

  @Override
  public List<PlanOption> options() {
    List<PlanOption> all =
        new ArrayList<>(
            List.of(
                TrayOptions.LITRES,
                SET,
                START,
                TrayOptions.WATTS,
                TrayOptions.AREA,
                TrayOptions.ROOM,
                TrayOptions.HUMIDITY,
                TrayOptions.DRAUGHT,
                COVER));
    all.addAll(TrayOptions.ofTray());
    all.addAll(List.of(WITHIN, POUR, POUR_AT));
    return List.copyOf(all);
  }

  @Override
  public Checked<PlanAnswer> answer(PlanWords w) {
    if (w.has(POUR_AT) && !w.has(POUR)) {
      return POUR.refused("nothing", POUR.accepted());
    }
    HeatedTray open = TrayOptions.tray(w);
    HeatedTray tray = w.flag(COVER) ? open.covered() : open;
    PlanAnswer a = new PlanAnswer(name(), w);
    losses(w, tray, a);
    hold(w, tray, open, a);
    warmUp(w, tray, a);
    pour(w, tray, a);
    return new Checked.Good<>(
        a.caution(
                "Estimates for a well mixed bath on a plate of constant contact: a real tray is"
                    + " slower. The pool equation was made for pools.")
            .caution(
                "A heater that can do more than it must heats a dry tray faster: an independent"
                    + " thermal cut-out on the plate is required, and mains wiring belongs to a"
                    + " licensed person.")
            .caution("A hot bath gives off far more vapour than a cold one: ventilate."));
  }

  private static void losses(PlanWords w, HeatedTray tray, PlanAnswer a) {
    double set = w.number(SET);
    double room = w.number(TrayOptions.ROOM);
    FreeSurface surface = FreeSurface.ofPaperShape(w.number(TrayOptions.AREA));
    double h = surface.convectionWPerM2K(set, room, w.number(TrayOptions.HUMIDITY));
    double r = FreeSurface.radiationWPerM2K(set, room);
    a.number("evaporation_w", "heat that goes with vapour", tray.vapour().wattsAt(set), "W");
    a.number("dry_w", "dry heat of surface, walls and base", tray.dryW(set), "W");
    a.number(
        "surface_dry_w",
        "  of it by the free surface in still air",
        surface.areaM2() * (h + r) * (set - room),
        "W");
    a.quiet("convection_w_per_m2_k", h).quiet("radiation_w_per_m2_k", r);
    a.number(
        "evaporation_ml_per_h",
        "water to pour back",
        tray.vapour().millilitresPerHourAt(set),
        "mL/h");
  }

  private static void hold(PlanWords w, HeatedTray tray, HeatedTray open, PlanAnswer a) {
    double set = w.number(SET);
    double watts = tray.holdW(set);
    a.number("hold_w", "heat that holds it", Math.max(0, watts), "W");
    a.number("hold_duty", "  as a share of the heater", Math.max(0, watts) / tray.watts(), "");
    a.number("hold_plate_c", "  with the plate at", tray.heldAt(set).plateC(), "°C");
    if (watts > tray.watts()) {
      a.caution("This heater is too weak to hold it.");
    }
    if (tray.heldAt(set).plateC() > tray.plateLimitC()) {
      a.caution("The plate would pass its limit: this contact cannot hold this temperature.");
    }
    if (!w.flag(COVER)) {
      double covered = open.covered().holdW(set);
      a.number("covered_hold_w", "heat that holds it under a cover", Math.max(0, covered), "W");
    }
  }

  private static void warmUp(PlanWords w, HeatedTray tray, PlanAnswer a) {
    double from = w.numberOr(START, w.number(TrayOptions.ROOM));
    double set = w.number(SET);
    HeatedTray.At at = new HeatedTray.At(from, from);
    a.number(
        "heat_up_kj",
        "heat into the liquid alone",
        Math.max(0, Water.heatKJ(tray.litres(), from, set)),
        "kJ");
    Optional<WarmUp> quickest = WarmUp.of(tray, at, set, WarmUp.BAND_K);
    Optional<WarmUp> calm = WarmUp.of(tray, at, set, 0);
    if (from > set + WarmUp.BAND_K) {
      a.none("warm_up_s", "the bath is warmer already: it must cool");
      return;
    }
    if (quickest.isEmpty()) {
      a.none("warm_up_s", "this heater does not bring it there in six hours");
    } else {
      double s = quickest.get().reachedS();
      a.number(
          "warm_up_s", "quickest warm-up there can be", s, "s, " + Numbers.shown(s / 60) + " min");
    }
    calm.ifPresent(
        c -> {
          a.number("warm_up_no_overshoot_s", "  without overshoot", c.reachedS(), "s");
          a.number("warm_up_plate_c", "  with the plate up to", c.plateC(), "°C");
        });
    if (w.has(WITHIN)) {
      WarmUp.leastWatts(tray, at, set, w.number(WITHIN) * 60, MOST_W)
          .ifPresentOrElse(
              watts -> a.number("least_w", "smallest heater for that time", watts, "W"),
              () -> a.none("least_w", "no heater up to 2000 W does it in that time"));
    }
  }

  private static void pour(PlanWords w, HeatedTray tray, PlanAnswer a) {
    if (!w.has(POUR)) {
      return;
    }
    double set = w.number(SET);
    double whole = tray.litres() + w.number(POUR);
    double mixed = (tray.litres() * set + w.number(POUR) * w.numberOr(POUR_AT, 20)) / whole;
    HeatedTray.At at = new HeatedTray.At(tray.heldAt(set).plateC(), mixed);
    a.number("pour_c", "after the pour the bath is at", mixed, "°C");
    WarmUp.of(tray.holding(whole), at, set, WarmUp.BAND_K)
        .ifPresentOrElse(
            up -> a.number("pour_recovery_s", "  and is back soonest in", up.reachedS(), "s"),
            () -> a.none("pour_recovery_s", "  and this heater does not bring it back"));
  }
}
