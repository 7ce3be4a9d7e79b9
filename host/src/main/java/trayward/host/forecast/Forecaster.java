package trayward.host.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import trayward.host.forecast.Forecast.Moment;
import trayward.host.forecast.Forecast.Refused;
import trayward.host.forecast.Forecast.Window;

/**
 * When a print's first blacks come and when to pull it, learned from a person's own prints. Made
 * once for a set of prints; any thread may ask and gets the same answer.
 *
 * <p>ln(seconds) = a + Ea (1/T - 1/T0) / R + c exhaustion + d bromide + e ln(strength / usual) + f
 * stops, T in kelvin, shrunk toward {@link Priors} ({@link ShrunkFit}).
 */
public final class Forecaster {

  /** Newest prints that count: years of work, and a fit of milliseconds. */
  public static final int PRINTS_MAX = 500;

  private static final String NO_PRINTS = "no prints yet";
  private static final String NO_PULLS = "no print with a pull yet";

  private final List<PastPrint> prints;
  private final Law emergence;
  private final Law pull;
  private final Law ratio;
  private @Nullable Sureness sureness;

  private Forecaster(List<PastPrint> prints) {
    List<PastPrint> pulled = prints.stream().filter(print -> print.pullS().isPresent()).toList();
    this.prints = prints;
    emergence = emergenceLaw(prints);
    pull =
        Law.of(Priors.PULL, Priors.SCATTER, pulled, print -> Math.log(print.pullS().orElseThrow()));
    ratio =
        Law.of(
            Priors.RATIO,
            Priors.RATIO_SCATTER,
            pulled,
            print -> Math.log(print.pullS().orElseThrow() / print.emergenceS()));
  }

  /**
   * Learns from prints.
   *
   * @param prints oldest first; those that teach nothing ({@link PastPrint#teaches}) are passed
   *     over, and of the others the newest {@value #PRINTS_MAX} count
   */
  public static Forecaster of(List<PastPrint> prints) {
    List<PastPrint> good = prints.stream().filter(PastPrint::teaches).toList();
    return new Forecaster(good.subList(Math.max(0, good.size() - PRINTS_MAX), good.size()));
  }

  static Law emergenceLaw(List<PastPrint> prints) {
    return Law.of(Priors.EMERGENCE, Priors.SCATTER, prints, print -> Math.log(print.emergenceS()));
  }

  /** When the first blacks should come, seconds from in, at a bath temperature that stays. */
  public Forecast emergence(Conditions conditions) {
    Optional<String> refusal = emergenceRefusal(conditions.bathC());
    return refusal.isPresent()
        ? new Refused(refusal.get())
        : window(Moment.EMERGENCE, emergence, conditions);
  }

  /** When to pull, seconds from in, as long as the sheet has not emerged. */
  public Forecast pull(Conditions conditions) {
    Optional<String> refusal = pullRefusal(conditions.bathC());
    return refusal.isPresent() ? new Refused(refusal.get()) : window(Moment.PULL, pull, conditions);
  }

  /** The prints it learned from, oldest first. */
  public List<PastPrint> prints() {
    return prints;
  }

  /** The law of emergence as it is believed now. */
  public List<Coefficient> emergenceCoefficients() {
    return emergence.coefficients();
  }

  /** The law of the pull as it is believed now. */
  public List<Coefficient> pullCoefficients() {
    return pull.coefficients();
  }

  /** The law of emergence fitted to the prints alone, for comparison; empty with too few. */
  public Optional<PlainFit> plain() {
    return PlainFit.of(prints);
  }

  /** How sure its forecasts were so far. The first question costs some twenty fits. */
  public synchronized Sureness sureness() {
    Sureness known = sureness;
    if (known == null) {
      known = Sureness.of(prints, emergence);
      sureness = known;
    }
    return known;
  }

  private static Window window(Moment moment, Law law, Conditions conditions) {
    Likely likely = law.likely(conditions);
    return new Window(
        moment,
        Math.exp(likely.centre()),
        seconds(likely.middle(0.8)),
        seconds(likely.middle(0.95)),
        law.prints(),
        false,
        caveats(law, conditions.features()));
  }

  private static Interval seconds(Interval logs) {
    return new Interval(Math.exp(logs.low()), Math.exp(logs.expected()), Math.exp(logs.high()));
  }

  private static List<String> caveats(Law law, Features features) {
    List<String> caveats = new ArrayList<>();
    law.missing(features).forEach(term -> caveats.add(term.word() + " not told"));
    return caveats;
  }

  Optional<String> emergenceRefusal(double bathC) {
    return emergence.prints() == 0 ? Optional.of(NO_PRINTS) : emergence.refusal(bathC);
  }

  Optional<String> pullRefusal(double bathC) {
    return pull.prints() == 0 ? Optional.of(NO_PULLS) : pull.refusal(bathC);
  }

  Law emergenceLaw() {
    return emergence;
  }

  Law ratioLaw() {
    return ratio;
  }

  /** Expected seconds to emergence at a bath temperature, °C. */
  DoubleUnaryOperator emergenceS(Features features) {
    return bathC -> emergence.expected(new Conditions(bathC, features));
  }
}
