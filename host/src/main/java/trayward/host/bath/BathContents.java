package trayward.host.bath;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * What is in the tray at a moment: a mass balance over everything that was said to have happened to
 * it. Immutable; a change gives the next one.
 *
 * @param bathId the bath it is
 * @param millilitres how much, mL
 * @param concentrates mL of each concentrate that is in it, by name
 * @param dissolved what is dissolved in it
 * @param shares share of each bath in it by volume poured, by id; they make 1
 * @param areaM2 area developed in it, with what was carried over, m²
 * @param hotS how long what is in it was hot, seconds; of parts with a past of their own the mean
 */
public record BathContents(
    long bathId,
    Amount millilitres,
    Map<String, Amount> concentrates,
    Dissolved dissolved,
    Map<Long, Double> shares,
    double areaM2,
    double hotS) {

  /** A bath that came of ever smaller shares of old ones keeps no more of them than this. */
  private static final double LEAST_SHARE = 1e-4;

  /** Copies the maps, in one order everywhere, so that sums come out the same to the last bit. */
  public BathContents {
    concentrates = Collections.unmodifiableMap(new TreeMap<>(concentrates));
    shares = Collections.unmodifiableMap(new TreeMap<>(shares));
  }

  /** An empty tray. */
  public static BathContents empty(long bathId) {
    return new BathContents(
        bathId, Amount.ZERO, Map.of(), Dissolved.NOTHING, Map.of(bathId, 1.0), 0, 0);
  }

  /** What it is after a change, or why that cannot be. */
  public Checked<BathContents> after(BathChange change) {
    if (change instanceof BathChange.Poured p) {
      return poured(p.what(), p.millilitres());
    }
    if (change instanceof BathChange.CarriedOver c) {
      return carriedOver(c.from(), c.millilitres());
    }
    if (change instanceof BathChange.Printed p) {
      return printed(p.areaM2(), p.use());
    }
    if (change instanceof BathChange.Evaporated e) {
      return evaporated(e.millilitres(), e.hotS());
    }
    if (change instanceof BathChange.LevelRead r) {
      return levelRead(r.litres());
    }
    return pouredAway(((BathChange.PouredAway) change).millilitres());
  }

  private Checked<BathContents> poured(Solution what, double ml) {
    if (!(ml > 0) || ml > BookEntry.MILLILITRES_MAX) {
      return refused("millilitres", ml, "more than 0, up to " + BookEntry.MILLILITRES_MAX + " mL");
    }
    Amount volume = Amount.within(ml, BathChange.JUG_SHARE);
    Amount litres = volume.times(1e-3);
    Map<String, Amount> more = new TreeMap<>(concentrates);
    what.concentrates()
        .forEach((name, share) -> more.merge(name, volume.times(share), Amount::plus));
    return new Checked.Good<>(
        new BathContents(
            bathId,
            millilitres.plus(volume),
            more,
            dissolved.plus(
                new Dissolved(
                    what.bromide().times(litres), what.sulfite().times(litres), Amount.ZERO)),
            mixed(Map.of(bathId, 1.0), ml),
            areaM2,
            hotS * keptShare(ml)));
  }

  private Checked<BathContents> carriedOver(BathContents from, double ml) {
    if (!(ml > 0) || ml > from.millilitres.value()) {
      return refused(
          "millilitres",
          ml,
          "more than 0, up to the " + plain(from.millilitres.value()) + " mL kept");
    }
    Amount volume = Amount.within(ml, BathChange.JUG_SHARE);
    Amount share = volume.times(1 / from.millilitres.value());
    Map<String, Amount> more = new TreeMap<>(concentrates);
    from.concentrates.forEach((name, a) -> more.merge(name, a.times(share), Amount::plus));
    return new Checked.Good<>(
        new BathContents(
            bathId,
            millilitres.plus(volume),
            more,
            dissolved.plus(from.dissolved.times(share)),
            mixed(from.shares, ml),
            areaM2 + from.areaM2 * share.value(),
            hotS * keptShare(ml) + from.hotS * (1 - keptShare(ml))));
  }

  /** Share by volume of what was here, once {@code ml} came. */
  private double keptShare(double ml) {
    return millilitres.value() / (millilitres.value() + ml);
  }

  /** Shares by volume once {@code ml} of something with these shares has come. */
  private Map<Long, Double> mixed(Map<Long, Double> coming, double ml) {
    double before = millilitres.value();
    double whole = before + ml;
    Map<Long, Double> next = new LinkedHashMap<>();
    shares.forEach((id, share) -> next.merge(id, share * before / whole, Double::sum));
    coming.forEach((id, share) -> next.merge(id, share * ml / whole, Double::sum));
    next.values().removeIf(share -> share < LEAST_SHARE);
    double sum = next.values().stream().mapToDouble(Double::doubleValue).sum();
    next.replaceAll((id, share) -> share / sum);
    return next;
  }

  /** The sheet carries out what the bath was, and leaves its bromide in what stays. */
  private Checked<BathContents> printed(double area, PrintUse use) {
    if (!(area > 0) || area > 2) {
      return refused("area_m2", area, "more than 0, up to 2 m²");
    }
    Checked<BathContents> drained = less(use.carryOut().times(area));
    if (!(drained instanceof Checked.Good<BathContents> good)) {
      return drained;
    }
    BathContents b = good.value();
    return new Checked.Good<>(
        new BathContents(
            bathId,
            b.millilitres,
            b.concentrates,
            b.dissolved.plus(
                new Dissolved(use.bromide().times(area), Amount.ZERO, use.developer().times(area))),
            shares,
            areaM2 + area,
            hotS));
  }

  /** A tray never dries out by arithmetic alone: the last tenth waits for a person's word. */
  private Checked<BathContents> evaporated(Amount ml, double hot) {
    if (!(ml.value() >= 0) || !(hot >= 0)) {
      return refused("millilitres", ml.value(), "0 or more");
    }
    double most = 0.9 * millilitres.value();
    Amount gone = ml.value() <= most ? ml : new Amount(most, Math.max(ml.standard(), most));
    BathContents left = holding(millilitres.plus(gone.times(-1)));
    return new Checked.Good<>(
        new BathContents(
            bathId,
            left.millilitres,
            concentrates,
            dissolved,
            shares,
            areaM2,
            hotS + (millilitres.value() > 0 ? hot : 0)));
  }

  private Checked<BathContents> levelRead(Amount litres) {
    return !(litres.value() > 0) || litres.value() > Bath.LITRES_MAX
        ? refused("litres", litres.value(), "more than 0, up to " + Bath.LITRES_MAX + " L")
        : new Checked.Good<>(holding(litres.times(1000)));
  }

  private BathContents holding(Amount ml) {
    return new BathContents(bathId, ml, concentrates, dissolved, shares, areaM2, hotS);
  }

  private Checked<BathContents> pouredAway(double ml) {
    return !(ml > 0)
        ? refused("millilitres", ml, "more than 0")
        : less(Amount.within(ml, BathChange.JUG_SHARE));
  }

  /** A part of the mixed bath goes, with all that is in it. */
  private Checked<BathContents> less(Amount ml) {
    double here = millilitres.value();
    if (ml.value() > here || here == 0) {
      return refused("millilitres", ml.value(), "at most the " + plain(here) + " mL in the tray");
    }
    Amount share = ml.times(1 / here);
    Map<String, Amount> left = new TreeMap<>(concentrates);
    left.replaceAll((name, amount) -> amount.without(share));
    return new Checked.Good<>(
        new BathContents(
            bathId,
            millilitres.plus(ml.times(-1)),
            left,
            dissolved.without(share),
            shares,
            areaM2 * (1 - share.value()),
            hotS));
  }

  /** Bromide as potassium bromide, g/L; none in an empty tray. */
  public Amount bromideGPerL() {
    return perLitre(dissolved.bromideG());
  }

  /** Sulfite as sodium sulfite, g/L. */
  public Amount sulfiteGPerL() {
    return perLitre(dissolved.sulfiteG());
  }

  /** Developer used up, as hydroquinone, g/L. */
  public Amount developerUsedGPerL() {
    return perLitre(dissolved.developerUsedG());
  }

  /** Share of all concentrates together in the whole, 0 to 1: how strong it was made. */
  public Amount strength() {
    return perLitre(concentrates.values().stream().reduce(Amount.ZERO, Amount::plus)).times(1e-3);
  }

  /** Area developed in each litre, m²/L: how used it is; 0 in an empty tray. */
  public double areaM2PerL() {
    return millilitres.value() > 0 ? areaM2 / (millilitres.value() / 1000) : 0;
  }

  /** Litres. */
  public Amount litres() {
    return millilitres.times(1e-3);
  }

  /** Share of a concentrate in the whole, 0 to 1. */
  public Amount share(String concentrate) {
    return perLitre(concentrates.getOrDefault(concentrate, Amount.ZERO)).times(1e-3);
  }

  private Amount perLitre(Amount what) {
    double litres = millilitres.value() / 1000;
    if (litres <= 0) {
      return Amount.ZERO;
    }
    double value = what.value() / litres;
    double relative = millilitres.standard() / millilitres.value();
    return new Amount(value, Math.hypot(what.standard() / litres, value * relative));
  }

  private static Checked<BathContents> refused(String field, double found, String accepted) {
    return new Checked.Bad<>(new Problem(field, plain(found), accepted));
  }

  private static String plain(double number) {
    return String.format(java.util.Locale.ROOT, "%.4g", number).replaceAll("\\.0+$", "");
  }
}
