package trayward.host.bath;

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
 * @param bromideG bromide as potassium bromide, g
 * @param sulfiteG sulfite as sodium sulfite, g
 * @param shares share of each bath in it by volume poured, by id; they make 1
 * @param areaM2 area developed in it, with what was carried over, m²
 */
public record BathContents(
    long bathId,
    Amount millilitres,
    Map<String, Amount> concentrates,
    Amount bromideG,
    Amount sulfiteG,
    Map<Long, Double> shares,
    double areaM2) {

  /** A bath that came of ever smaller shares of old ones keeps no more of them than this. */
  private static final double LEAST_SHARE = 1e-4;

  /** Copies the maps. */
  public BathContents {
    concentrates = Map.copyOf(concentrates);
    shares = Map.copyOf(shares);
  }

  /** An empty tray. */
  public static BathContents empty(long bathId) {
    return new BathContents(
        bathId, Amount.ZERO, Map.of(), Amount.ZERO, Amount.ZERO, Map.of(bathId, 1.0), 0);
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
      return evaporated(e.millilitres());
    }
    if (change instanceof BathChange.LevelRead r) {
      return levelRead(r.litres());
    }
    return pouredAway(((BathChange.PouredAway) change).millilitres());
  }

  private Checked<BathContents> poured(Solution what, double ml) {
    if (!(ml > 0) || ml > Addition.MILLILITRES_MAX) {
      return refused("millilitres", ml, "more than 0, up to " + Addition.MILLILITRES_MAX + " mL");
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
            bromideG.plus(what.bromide().times(litres)),
            sulfiteG.plus(what.sulfite().times(litres)),
            mixed(Map.of(bathId, 1.0), ml),
            areaM2));
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
            bromideG.plus(from.bromideG.times(share)),
            sulfiteG.plus(from.sulfiteG.times(share)),
            mixed(from.shares, ml),
            areaM2 + from.areaM2 * share.value()));
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
            b.bromideG.plus(use.bromide().times(area)),
            b.sulfiteG,
            shares,
            areaM2 + area));
  }

  private Checked<BathContents> evaporated(Amount ml) {
    return !(ml.value() >= 0) || ml.value() >= millilitres.value()
        ? refused(
            "millilitres", ml.value(), "less than the " + plain(millilitres.value()) + " mL here")
        : new Checked.Good<>(holding(millilitres.plus(ml.times(-1))));
  }

  private Checked<BathContents> levelRead(Amount litres) {
    return !(litres.value() > 0) || litres.value() > Bath.LITRES_MAX
        ? refused("litres", litres.value(), "more than 0, up to " + Bath.LITRES_MAX + " L")
        : new Checked.Good<>(holding(litres.times(1000)));
  }

  private BathContents holding(Amount ml) {
    return new BathContents(bathId, ml, concentrates, bromideG, sulfiteG, shares, areaM2);
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
            bromideG.without(share),
            sulfiteG.without(share),
            shares,
            areaM2 * (1 - share.value())));
  }

  /** Bromide as potassium bromide, g/L; none in an empty tray. */
  public Amount bromideGPerL() {
    return perLitre(bromideG);
  }

  /** Sulfite as sodium sulfite, g/L. */
  public Amount sulfiteGPerL() {
    return perLitre(sulfiteG);
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
