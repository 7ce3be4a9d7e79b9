package trayward.host.report.plan;

import static trayward.host.report.plan.PlanOption.flag;
import static trayward.host.report.plan.PlanOption.number;
import static trayward.host.report.plan.PlanOption.text;

import java.util.List;
import java.util.OptionalDouble;
import trayward.host.bath.Amount;
import trayward.host.bath.Bath;
import trayward.host.bath.BathChange;
import trayward.host.bath.BathContents;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.Dilution;
import trayward.host.bath.Dose;
import trayward.host.bath.MakeUp;
import trayward.host.bath.MolarMass;
import trayward.host.bath.Solution;

/** A bath made up, what it then holds, and what brings it to a content. */
final class BathPlan implements Planner {

  static final PlanOption DILUTION =
      text("dilution", "concentrates and water by volume", "parts joined by +, such as 1+7").must();
  static final PlanOption LITRES =
      number("litres", "volume made up", "L", 0.05, Bath.LITRES_MAX).must();
  static final PlanOption A_BROMIDE =
      number("concentrate_bromide", "bromide of each concentrate, as KBr", "g/L", 0, 500).or(0);
  static final PlanOption A_SULFITE =
      number("concentrate_sulfite", "sulfite of each concentrate, as Na2SO3", "g/L", 0, 500).or(0);
  static final PlanOption BROMIDE =
      number("bromide", "potassium bromide solution added", "mL", 0, 2000).or(0);
  static final PlanOption BROMIDE_PERCENT =
      number("bromide_percent", "its strength, weight in volume", "%", 0.1, 50).or(10);
  static final PlanOption SULFITE =
      number("sulfite", "sodium sulfite solution added", "mL", 0, 2000).or(0);
  static final PlanOption SULFITE_PERCENT =
      number("sulfite_percent", "its strength, weight in volume", "%", 0.1, 25).or(10);
  static final PlanOption KEPT =
      number("kept", "used developer of an earlier bath", "mL", 0, 20_000).or(0);
  static final PlanOption KEPT_BROMIDE =
      number("kept_bromide", "its bromide, as KBr", "g/L", 0, 100).or(0);
  static final PlanOption KEPT_SULFITE =
      number("kept_sulfite", "its sulfite, as Na2SO3", "g/L", 0, 200).or(0);
  static final PlanOption ON_TOP =
      flag("on_top", "additions come on top of the volume, in place of some of the water");
  static final PlanOption WANT_BROMIDE =
      number("want_bromide", "how much bromide solution brings it to", "g/L", 0, 100);
  static final PlanOption WANT_SULFITE =
      number("want_sulfite", "how much sulfite solution brings it to", "g/L", 0, 200);

  private static final double K = 2;

  @Override
  public String name() {
    return "bath";
  }

  @Override
  public String description() {
    return "Measures for a dilution, grams in a litre after additions, and the way back.";
  }

  @Override
  public List<PlanOption> options() {
    return List.of(
        DILUTION,
        LITRES,
        A_BROMIDE,
        A_SULFITE,
        BROMIDE,
        BROMIDE_PERCENT,
        SULFITE,
        SULFITE_PERCENT,
        KEPT,
        KEPT_BROMIDE,
        KEPT_SULFITE,
        ON_TOP,
        WANT_BROMIDE,
        WANT_SULFITE);
  }

  @Override
  public Checked<PlanAnswer> answer(PlanWords w) {
    Checked<Dilution> read = Dilution.read(DILUTION.name(), w.text(DILUTION));
    if (read instanceof Checked.Bad<Dilution> bad) {
      return new Checked.Bad<>(bad.problem());
    }
    MakeUp up = new MakeUp(((Checked.Good<Dilution>) read).value(), w.number(LITRES) * 1000);
    double added = w.number(BROMIDE) + w.number(SULFITE) + w.number(KEPT);
    double water = w.flag(ON_TOP) ? up.waterMl() : up.waterMl() - added;
    if (water < 0) {
      return LITRES.refused(
          w.text(LITRES), "more than its concentrates and additions together take");
    }
    PlanAnswer a = new PlanAnswer(name(), w);
    measures(up, water, a);
    BathContents bath = made(w, up, water);
    contents(bath, a);
    want(w, bath, water, a);
    return new Checked.Good<>(
        a.caution("± is two standard uncertainties, of jugs and stocks read to 2 %.")
            .caution(
                "What was never declared of a concentrate is not in these numbers. Gloves and"
                    + " goggles; concentrate into water."));
  }

  private static void measures(MakeUp up, double water, PlanAnswer a) {
    a.words("dilution", up.dilution().words());
    List<Double> parts = up.concentratesMl();
    a.list("concentrates_ml", "of each concentrate", parts, "mL");
    a.number("water_ml", "water", water, "mL");
  }

  /** The bath book's own balance of all that is poured. */
  private static BathContents made(PlanWords w, MakeUp up, double water) {
    BathContents bath = poured(BathContents.empty(1), Solution.WATER, water);
    Amount bromide = Amount.exactly(w.number(A_BROMIDE));
    Amount sulfite = Amount.exactly(w.number(A_SULFITE));
    int number = 1;
    for (double ml : up.concentratesMl()) {
      bath = poured(bath, new Solution("concentrate " + number++, true, bromide, sulfite), ml);
    }
    bath = poured(bath, Solution.bromide(w.number(BROMIDE_PERCENT)), w.number(BROMIDE));
    bath = poured(bath, Solution.sulfite(w.number(SULFITE_PERCENT)), w.number(SULFITE));
    Solution kept =
        new Solution(
            "used developer",
            false,
            Amount.exactly(w.number(KEPT_BROMIDE)),
            Amount.exactly(w.number(KEPT_SULFITE)));
    return poured(bath, kept, w.number(KEPT));
  }

  /** Poured jug by jug, as none holds more than the bath book takes at once. */
  private static BathContents poured(BathContents into, Solution what, double ml) {
    BathContents bath = into;
    double left = ml;
    while (left > 1e-9) {
      double jug = Math.min(left, BookEntry.MILLILITRES_MAX);
      if (bath.after(new BathChange.Poured(what, jug)) instanceof Checked.Good<BathContents> g) {
        bath = g.value();
      }
      left -= jug;
    }
    return bath;
  }

  private static void contents(BathContents bath, PlanAnswer a) {
    a.number("volume_ml", "all together", bath.millilitres().value(), "mL");
    List<Double> shares =
        bath.concentrates().keySet().stream().sorted().map(n -> bath.share(n).value()).toList();
    a.list("concentrate_shares", "  share of each concentrate", shares, "");
    content(a, "bromide", "bromide, as KBr", bath.bromideGPerL(), MolarMass.KBR);
    content(a, "sulfite", "sulfite, as Na2SO3", bath.sulfiteGPerL(), MolarMass.of("Na2SO3"));
  }

  private static void content(
      PlanAnswer a, String key, String words, Amount gPerL, double gPerMol) {
    String doubt = "g/L ± " + Numbers.shown(K * gPerL.standard());
    a.number(key + "_g_per_l", words, gPerL.value(), doubt);
    a.quiet(key + "_doubt_g_per_l", K * gPerL.standard());
    a.number(key + "_mmol_per_l", "  the same", gPerL.value() / gPerMol * 1000, "mmol/L");
  }

  private static void want(PlanWords w, BathContents bath, double water, PlanAnswer a) {
    if (w.has(WANT_BROMIDE)) {
      Dose dose = Dose.ofPercent(w.number(BROMIDE_PERCENT));
      double here = bath.bromideGPerL().value();
      double wanted = w.number(WANT_BROMIDE);
      double ml = bath.millilitres().value();
      told(a, "bromide_in_place_ml", wanted, dose.inPlaceMl(ml, water, here, wanted));
      told(a, "bromide_on_top_ml", wanted, dose.onTopMl(ml, here, wanted));
    }
    if (w.has(WANT_SULFITE)) {
      Dose dose = Dose.ofPercent(w.number(SULFITE_PERCENT));
      double here = bath.sulfiteGPerL().value();
      double wanted = w.number(WANT_SULFITE);
      double ml = bath.millilitres().value();
      told(a, "sulfite_in_place_ml", wanted, dose.inPlaceMl(ml, water, here, wanted));
      told(a, "sulfite_on_top_ml", wanted, dose.onTopMl(ml, here, wanted));
    }
  }

  private static void told(PlanAnswer a, String key, double wanted, OptionalDouble ml) {
    String what = key.substring(0, key.indexOf('_')) + " solution";
    String how = key.contains("on_top") ? "on top" : "in place of water";
    String words = "more " + what + " " + how + ", to " + Numbers.shown(wanted) + " g/L";
    if (ml.isPresent()) {
      a.number(key, words, ml.getAsDouble(), "mL");
    } else {
      a.none(key, words + ": it holds more already, or the solution is too weak");
    }
  }
}
