package trayward.host.report.plan;

import static trayward.host.report.plan.PlanOption.number;

import java.util.List;
import trayward.host.bath.Bath;
import trayward.host.heat.HeatedTray;
import trayward.host.heat.PoolEvaporation;

/** What several planners ask of a tray and its room. Stateless. */
final class TrayOptions {

  static final PlanOption AREA =
      number("area", "free surface of the bath", "m²", 0.001, PoolEvaporation.AREA_MAX_M2)
          .or(0.072);
  static final PlanOption DRAUGHT =
      number("draught", "air speed over the bath", "m/s", 0, PoolEvaporation.DRAUGHT_MAX_M_PER_S)
          .or(0.15);
  static final PlanOption ROOM = number("room", "room temperature", "°C", -10, 45).or(20);
  static final PlanOption HUMIDITY =
      number("humidity", "relative humidity of the room, 1 saturated", "", 0, 1).or(0.5);
  static final PlanOption LITRES =
      number("litres", "liquid in the tray", "L", 0.05, Bath.LITRES_MAX).or(1);
  static final PlanOption WATTS = number("watts", "heater", "W", 10, 2000).or(250);
  static final PlanOption FACTOR =
      number(
              "factor",
              "evaporation beside the pool equation, 0.74 for a bath nobody rocks",
              "",
              0,
              3)
          .or(1);
  static final PlanOption BATH_LOSS =
      number("bath_loss", "dry loss of surface, walls and base, else by the area", "W/K", 0, 100);
  static final PlanOption PLATE =
      number("plate", "heat capacity of the plate", "J/K", 100, 10_000).or(1100);
  static final PlanOption CONTACT =
      number("contact", "contact of plate and bath", "W/K", 1, 100).or(18);
  static final PlanOption PLATE_LOSS =
      number("plate_loss", "loss of the plate to the room", "W/K", 0, 20).or(0.5);
  static final PlanOption PLATE_LIMIT =
      number("plate_limit", "highest plate temperature", "°C", 30, 95).or(75);

  private TrayOptions() {}

  /** The tray alone, its room left out. */
  static List<PlanOption> ofTray() {
    return List.of(FACTOR, BATH_LOSS, PLATE, CONTACT, PLATE_LOSS, PLATE_LIMIT);
  }

  /** How the bath evaporates, by so much of the correlation. */
  static PoolEvaporation evaporation(PlanWords w, double factor) {
    return new PoolEvaporation(
        w.number(AREA), w.number(DRAUGHT), w.number(ROOM), w.number(HUMIDITY), factor);
  }

  /** The tray on its plate, uncovered. */
  static HeatedTray tray(PlanWords w) {
    double usual = HeatedTray.usualBathLossWPerK(w.number(AREA));
    return new HeatedTray(
        w.number(LITRES),
        w.number(WATTS),
        w.number(PLATE),
        w.number(CONTACT),
        w.numberOr(BATH_LOSS, usual),
        w.number(PLATE_LOSS),
        w.number(PLATE_LIMIT),
        evaporation(w, w.number(FACTOR)));
  }
}
