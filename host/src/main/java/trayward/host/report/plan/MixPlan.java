package trayward.host.report.plan;

import static trayward.host.report.plan.PlanOption.number;

import java.util.List;
import java.util.Optional;
import trayward.host.bath.Bath;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.heat.Mixing;

/** Hot and cold water, and a tray of its own temperature, to one temperature. */
final class MixPlan implements Planner {

  static final PlanOption HOT = number("hot", "the hotter water", "°C", 0, 100).must();
  static final PlanOption COLD = number("cold", "the colder water", "°C", 0, 100).must();
  static final PlanOption TARGET = number("target", "temperature wanted", "°C", 0, 100);
  static final PlanOption LITRES =
      number("litres", "all liquid together at the end", "L", 0.05, Bath.LITRES_MAX);
  static final PlanOption HOT_LITRES =
      number("hot_litres", "in place of a target: hotter water poured", "L", 0, Bath.LITRES_MAX);
  static final PlanOption COLD_LITRES =
      number("cold_litres", "colder water poured", "L", 0, Bath.LITRES_MAX);
  static final PlanOption TRAY =
      number("tray", "heat capacity of tray and plate that warm up with it", "J/K", 0, 20_000)
          .or(0);
  static final PlanOption TRAY_AT =
      number("tray_at", "temperature of the tray and what is in it", "°C", 0, 100).or(20);
  static final PlanOption PRESENT =
      number("present", "liquid in the tray already", "L", 0, Bath.LITRES_MAX).or(0);

  private static final double SCALDS_C = 50;

  @Override
  public String name() {
    return "mix";
  }

  @Override
  public String description() {
    return "How much hot and cold water make a temperature, with the tray that takes part.";
  }

  @Override
  public List<PlanOption> options() {
    return List.of(HOT, COLD, TARGET, LITRES, HOT_LITRES, COLD_LITRES, TRAY, TRAY_AT, PRESENT);
  }

  @Override
  public Checked<PlanAnswer> answer(PlanWords w) {
    Optional<Problem> wrong = clash(w);
    if (wrong.isPresent()) {
      return new Checked.Bad<>(wrong.get());
    }
    Mixing tray = new Mixing(w.number(TRAY), w.number(TRAY_AT), w.number(PRESENT));
    return w.has(TARGET) ? toTarget(w, tray) : ofMeasures(w, tray);
  }

  private static Optional<Problem> clash(PlanWords w) {
    if (w.has(TARGET) && (w.has(HOT_LITRES) || w.has(COLD_LITRES))) {
      return Optional.of(
          new Problem(TARGET.name(), w.text(TARGET), "either a target or litres poured, not both"));
    }
    if (!w.has(TARGET) && !w.has(HOT_LITRES) && !w.has(COLD_LITRES)) {
      return Optional.of(new Problem(TARGET.name(), "nothing", TARGET.accepted()));
    }
    return w.together(TARGET, LITRES).or(() -> w.together(HOT_LITRES, COLD_LITRES));
  }

  private Checked<PlanAnswer> toTarget(PlanWords w, Mixing tray) {
    double hotC = w.number(HOT);
    double coldC = w.number(COLD);
    double litres = w.number(LITRES);
    if (litres <= w.number(PRESENT)) {
      return LITRES.refused(w.text(LITRES), "more than the " + w.text(PRESENT) + " L present");
    }
    double poured = litres - w.number(PRESENT);
    double most = tray.mixedC(poured, hotC, 0, coldC);
    double least = tray.mixedC(0, hotC, poured, coldC);
    Optional<Mixing.Measures> found = tray.measuresFor(w.number(TARGET), litres, hotC, coldC);
    if (hotC <= coldC) {
      return HOT.refused(w.text(HOT), "more than the " + w.text(COLD) + " °C of the colder");
    }
    if (found.isEmpty()) {
      return TARGET.refused(
          w.text(TARGET),
          Numbers.shown(least) + " to " + Numbers.shown(most) + " °C with these waters and tray");
    }
    PlanAnswer a = new PlanAnswer(name(), w);
    a.number("hot_l", "hot water", found.get().hotLitres(), "L");
    a.number("cold_l", "cold water", found.get().coldLitres(), "L");
    return new Checked.Good<>(end(w, a));
  }

  private Checked<PlanAnswer> ofMeasures(PlanWords w, Mixing tray) {
    double hot = w.number(HOT_LITRES);
    double cold = w.number(COLD_LITRES);
    if (hot + cold == 0) {
      return HOT_LITRES.refused(w.text(HOT_LITRES), "more than 0 L of hot and cold together");
    }
    PlanAnswer a = new PlanAnswer(name(), w);
    double mixed = tray.mixedC(hot, w.number(HOT), cold, w.number(COLD));
    a.number("mixed_c", "all together", mixed, "°C");
    return new Checked.Good<>(end(w, a));
  }

  private static PlanAnswer end(PlanWords w, PlanAnswer a) {
    if (w.number(HOT) >= SCALDS_C) {
      a.caution("Water of this heat scalds: gloves, and pour the hot into the cold.");
    }
    return a.caution(
        "A balance of heat without losses: stir, and measure before the first sheet goes in.");
  }
}
