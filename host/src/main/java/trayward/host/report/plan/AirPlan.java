package trayward.host.report.plan;

import static trayward.host.report.plan.PlanOption.choice;
import static trayward.host.report.plan.PlanOption.number;
import static trayward.host.report.plan.PlanOption.text;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import trayward.host.air.Gas;
import trayward.host.air.MakeUpAir;
import trayward.host.air.Room;
import trayward.host.air.Spell;
import trayward.host.air.VapourBound;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.heat.Water;

/** Air changes, purge, after-run, concentrations, damp and the air that must come in. */
final class AirPlan implements Planner {

  static final PlanOption VOLUME =
      number("volume", "air in the room or hood", "m³", 0.05, 10_000).must();
  static final PlanOption FLOW =
      number("flow", "air the fan takes out, as measured", "m³/h", 1, 100_000).must();
  static final PlanOption MIXING =
      number("mixing", "how badly it mixes, 1 perfect, 10 very poor", "", 1, 10).or(3);
  static final PlanOption REMOVAL =
      number("removal", "share that purge and after-run take away", "%", 50, 99.99).or(99);
  static final PlanOption GAS =
      choice("gas", "what is given off", Stream.of(Gas.values()).map(Gas::word).toList());
  static final PlanOption SOURCE = number("source", "how much of it", "mg/h", 0, 1_000_000);
  static final PlanOption FORMALDEHYDE =
      number("formaldehyde", "in place of a source: made up in the bath", "mmol/L", 0, 2000);
  static final PlanOption BATH = number("bath", "bath temperature", "°C", 0, 100).or(40);
  static final PlanOption MINUTES =
      number("minutes", "how long you stay beside the bath", "min", 1, 1440).or(120);
  static final PlanOption DOWN_TO =
      number("down_to", "concentration at which the after-run may end", "mg/m³", 1e-6, 1e6);
  static final PlanOption OUTSIDE = number("outside", "temperature outside", "°C", -50, 50);
  static final PlanOption INLET = number("inlet", "air speed in the inlet", "m/s", 0.1, 5).or(1);
  static final PlanOption SPELLS =
      text(
          "spells",
          "times spent in concentrations, for the day's mean",
          "such as 2x0.15,4x0.05, h and ppm");
  static final PlanOption MIXTURE =
      text("mixture", "concentrations and their limits", "such as 500/1000,45/200");

  @Override
  public String name() {
    return "air";
  }

  @Override
  public String description() {
    return "Air changes, purge and after-run, upper bounds of vapour, damp, air that must come in.";
  }

  @Override
  public List<PlanOption> options() {
    return List.of(
        VOLUME,
        FLOW,
        MIXING,
        REMOVAL,
        GAS,
        SOURCE,
        FORMALDEHYDE,
        BATH,
        TrayOptions.AREA,
        TrayOptions.DRAUGHT,
        TrayOptions.ROOM,
        TrayOptions.HUMIDITY,
        MINUTES,
        DOWN_TO,
        OUTSIDE,
        INLET,
        SPELLS,
        MIXTURE);
  }

  @Override
  public Checked<PlanAnswer> answer(PlanWords w) {
    Optional<Problem> wrong = clash(w);
    if (wrong.isPresent()) {
      return new Checked.Bad<>(wrong.get());
    }
    Room room = new Room(w.number(VOLUME), w.number(FLOW), w.number(MIXING));
    PlanAnswer a = new PlanAnswer(name(), w);
    a.number("air_changes_per_h", "air changes", room.changesPerHour(), "per hour");
    a.number("effective_m3_per_h", "flow that counts, mixed so", room.effectiveM3PerH(), "m³/h");
    AirPurge.say(w, room, a);
    AirPurge.advice(w, a);
    vapour(w, room, a);
    source(w).ifPresent(mgPerH -> AirVapours.say(w, room, mgPerH, a));
    lists(w, a);
    makeUp(w, a);
    return new Checked.Good<>(AirVapours.cautions(a));
  }

  private static Optional<Problem> clash(PlanWords w) {
    if (w.has(SOURCE) && w.has(FORMALDEHYDE)) {
      return Optional.of(
          new Problem(SOURCE.name(), w.text(SOURCE), "either a source or formaldehyde, not both"));
    }
    if (w.has(FORMALDEHYDE) && !w.text(GAS).equals(Gas.FORMALDEHYDE.word())) {
      return Optional.of(new Problem(GAS.name(), w.text(GAS), Gas.FORMALDEHYDE.word()));
    }
    if (w.has(DOWN_TO) && source(w).isEmpty()) {
      return Optional.of(new Problem(SOURCE.name(), "nothing", SOURCE.accepted()));
    }
    return Pairs.problem(w, SPELLS, "x", Pairs.SPELL)
        .or(() -> Pairs.problem(w, MIXTURE, "/", Pairs.SHARE));
  }

  private static void vapour(PlanWords w, Room room, PlanAnswer a) {
    double gramsPerH = TrayOptions.evaporation(w, 1).gramsPerHourAt(w.number(BATH));
    double added = room.vapourAddedGPerM3(gramsPerH);
    double saturated = Water.saturatedAirGPerM3(w.number(TrayOptions.ROOM));
    double humidity = w.number(TrayOptions.HUMIDITY) + added / saturated;
    a.number("evaporation_g_per_h", "water the bath gives off", gramsPerH, "g/h");
    a.number("vapour_added_g_per_m3", "damp that adds to the room", added, "g/m³");
    a.number("humidity", "relative humidity then, 1 saturated", Math.min(1, humidity), "");
    if (humidity >= 1) {
      a.caution("The room's air would be saturated: walls, paper and wiring get wet.");
    }
  }

  /** What is given off, mg/h; empty where nothing was told of it. */
  private static Optional<Double> source(PlanWords w) {
    if (w.has(FORMALDEHYDE)) {
      return Optional.of(
          new VapourBound(w.number(FORMALDEHYDE), w.number(BATH), TrayOptions.evaporation(w, 1))
              .mgPerH());
    }
    return w.has(SOURCE) ? Optional.of(w.number(SOURCE)) : Optional.empty();
  }

  private static void lists(PlanWords w, PlanAnswer a) {
    if (w.has(SPELLS)) {
      List<Spell> day =
          Pairs.of(w.text(SPELLS), "x").stream()
              .map(p -> new Spell(p.first(), p.second()))
              .toList();
      a.number("spells_mean", "mean of the day over eight hours", Spell.dayMean(day), "ppm");
    }
    if (w.has(MIXTURE)) {
      List<Pairs.Pair> all = Pairs.of(w.text(MIXTURE), "/");
      double sum =
          Spell.mixture(
              all.stream().map(p -> p.first()).toList(),
              all.stream().map(p -> p.second()).toList());
      a.number("mixture", "sum of shares of the limits, which 1 is the limit of", sum, "");
    }
  }

  private static void makeUp(PlanWords w, PlanAnswer a) {
    MakeUpAir air = new MakeUpAir(w.number(FLOW), w.number(INLET));
    a.number("make_up_m3_per_h", "air that must come in", air.flowM3PerH(), "m³/h");
    a.number("inlet_cm2", "free area of its inlet", air.inletCm2(), "cm²");
    if (w.has(OUTSIDE)) {
      double watts = air.heatW(w.number(TrayOptions.ROOM), w.number(OUTSIDE));
      a.number("make_up_heat_w", "heat to warm it", Math.max(0, watts), "W");
    }
  }
}
