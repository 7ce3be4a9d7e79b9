package trayward.host.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import trayward.host.forecast.Forecast.Moment;
import trayward.host.forecast.Forecast.Refused;
import trayward.host.forecast.Forecast.Window;

/**
 * A print that is in the developer, watched: what is left of its way at the temperature now.
 * Immutable; each reading and mark returns the next. Any thread may ask.
 *
 * <p>The way is thermal time ({@link ThermalTime}); emergence comes where it reaches exp(residual),
 * the pull where it reaches that times the ratio of the two.
 *
 * @param forecaster what was learned before this print
 * @param features what is known of bath and sheet
 * @param time how far it has come
 * @param beyondS seconds so far beyond the logged temperatures
 * @param emerged how far it had come at emergence; empty before
 */
public record Watch(
    Forecaster forecaster,
    Features features,
    ThermalTime time,
    double beyondS,
    OptionalDouble emerged) {

  /** Longest print that is watched, seconds: as {@link PastPrint#LONGEST_S}. */
  public static final double LONGEST_S = PastPrint.LONGEST_S;

  /** Ends of the 95 %, ends of the 80 %, and the middle. */
  private static final double[] SHARES = {0.025, 0.1, 0.5, 0.9, 0.975};

  /** Scales before the centre that stand for "no way gone yet": nothing lies before them. */
  private static final double BEFORE_ALL = 1000;

  /** The sheet is in. A bath temperature of NaN is one that is not known yet. */
  public static Watch begun(Forecaster forecaster, Conditions conditions) {
    return new Watch(
        forecaster,
        conditions.features(),
        ThermalTime.begun(OptionalDouble.of(conditions.bathC())),
        0,
        OptionalDouble.empty());
  }

  /**
   * A reading later.
   *
   * @param elapsedS seconds since in
   * @param bathC the bath, °C; empty where not valid
   */
  public Watch at(double elapsedS, OptionalDouble bathC) {
    ThermalTime next = time.step(elapsedS, bathC, tauS());
    boolean beyond =
        next.validC().isPresent() && forecaster.emergenceLaw().beyond(next.validC().getAsDouble());
    double moreS = beyond ? next.elapsedS() - time.elapsedS() : 0;
    return new Watch(forecaster, features, next, beyondS + moreS, emerged);
  }

  /** The first blacks came, at a time near the last reading, seconds since in. */
  public Watch emergedAt(double elapsedS) {
    double way = Double.isFinite(elapsedS) ? time.progressAt(elapsedS, tauS()) : 0;
    return new Watch(
        forecaster,
        features,
        time,
        beyondS,
        way > 0 ? OptionalDouble.of(way) : OptionalDouble.empty());
  }

  /** The mark of emergence was taken back. */
  public Watch notEmerged() {
    return new Watch(forecaster, features, time, beyondS, OptionalDouble.empty());
  }

  /** What is waited for next: emergence, or after it the pull; seconds from in, never past. */
  public Forecast now() {
    if (!time.knows()) {
      return new Refused(
          time.validC().isEmpty() && time.elapsedS() <= ThermalTime.HELD_MAX_S
              ? "no valid bath reading yet"
              : "no valid bath reading for too long: the watch no longer knows");
    }
    if (time.elapsedS() > LONGEST_S) {
      return new Refused("longer than any print that is watched");
    }
    double bathC = time.validC().orElseThrow();
    return emerged.isPresent() ? pull(bathC, emerged.getAsDouble()) : emergence(bathC);
  }

  private Forecast emergence(double bathC) {
    Optional<String> refusal = forecaster.emergenceRefusal(bathC);
    if (refusal.isPresent()) {
      return new Refused(refusal.get());
    }
    Law law = forecaster.emergenceLaw();
    Likely here = law.likely(new Conditions(bathC, features));
    // The way is told in expected times: the residual alone is left of the distribution.
    Likely residual = new Likely(0, here.scale(), here.freedom());
    return window(Moment.EMERGENCE, law, residual);
  }

  private Forecast pull(double bathC, double emergedAt) {
    Optional<String> refusal = forecaster.pullRefusal(bathC);
    if (refusal.isPresent()) {
      return new Refused(refusal.get());
    }
    Law law = forecaster.ratioLaw();
    Likely ratio = law.likely(new Conditions(bathC, features));
    Likely way = new Likely(Math.log(emergedAt) + ratio.centre(), ratio.scale(), ratio.freedom());
    return window(Moment.PULL, law, way);
  }

  /** What is left of the way, at the pace of the temperature now, given that it is left. */
  private Window window(Moment moment, Law law, Likely way) {
    double gone = time.progressNow(tauS());
    double floor = gone > 0 ? Math.log(gone) : way.centre() - BEFORE_ALL * way.scale();
    double tauNowS = tauS().applyAsDouble(time.validC().orElseThrow());
    double[] s = new double[SHARES.length];
    for (int i = 0; i < s.length; i++) {
      double left = Math.exp(way.quantileBeyond(floor, SHARES[i])) - gone;
      s[i] = time.elapsedS() + Math.max(0, left) * tauNowS;
    }
    return new Window(
        moment,
        s[2],
        new Interval(s[1], s[2], s[3]),
        new Interval(s[0], s[2], s[4]),
        law.prints(),
        way.above(floor) <= 1 - SHARES[1],
        caveats(moment, law, way.above(floor)));
  }

  private List<String> caveats(Moment moment, Law law, double chance) {
    List<String> caveats = new ArrayList<>();
    if (beyondS > 0) {
      caveats.add(
          String.format(
              Locale.ROOT,
              "%.0f s beyond the logged %s",
              beyondS,
              forecaster.emergenceLaw().logged()));
    }
    if (chance < SHARES[0]) {
      caveats.add(moment.word() + " is later than past prints let expect");
    }
    law.missing(features).forEach(term -> caveats.add(term.word() + " not told"));
    return caveats;
  }

  private DoubleUnaryOperator tauS() {
    return forecaster.emergenceS(features);
  }
}
