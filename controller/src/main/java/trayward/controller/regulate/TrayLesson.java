package trayward.controller.regulate;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a warm-up has taught. Immutable.
 *
 * @param declaredL liquid that was declared, L
 * @param found the last fit
 * @param complete whether the warm-up is over and its coast and hold are in the fit
 */
public record TrayLesson(double declaredL, FitResult found, boolean complete) {

  /** Differences below this are a jug's, not a person's forgetting. */
  private static final double AS_SET = 0.08;

  /** A difference is told only beyond so many standard deviations. */
  private static final double SURE = 2;

  /** Lessons that say the same are equal, by whatever log and fit they came about. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof TrayLesson o
        && Double.compare(declaredL, o.declaredL) == 0
        && complete == o.complete
        && seconds() == o.seconds()
        && found.belief().equals(o.found.belief())
        && found.doubt().equals(o.found.doubt())
        && Double.compare(found.rmsK(), o.found.rmsK()) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(declaredL, complete, seconds(), found.belief(), found.doubt());
  }

  /** How much of the warm-up is in it, s. */
  public int seconds() {
    return found.job().view().seconds();
  }

  /** Liquid seen, L. Absolute only as far as the heater's watts are: the doubt says how far. */
  public double litres() {
    return found.belief().model().liquidL();
  }

  /**
   * Standard deviation of {@link #litres}, L.
   *
   * <p>Temperatures show watts per litre. What is believed of the plate was learned under the same
   * watts, so it cannot make them surer: the doubt is never below what heater and litres leave each
   * other.
   */
  public double litresDoubt() {
    return litres() * doubt();
  }

  private double doubt() {
    TrayDoubt before = found.job().doubt();
    double shared =
        before.heater() * before.liquid() / Math.hypot(before.heater(), before.liquid());
    return Math.max(shared, found.doubt().liquid());
  }

  /** Whether there is less liquid than declared ({@code -1}), as much (0), or more (1). */
  public int against() {
    double off = Math.log(litres() / declaredL);
    boolean told = Math.abs(off) > Math.max(AS_SET, SURE * doubt());
    return told ? (int) Math.signum(off) : 0;
  }

  /** For a person. */
  public String words() {
    String much = String.format(java.util.Locale.ROOT, "about %.1f L", litres());
    return switch (against()) {
      case -1 -> much + ", less liquid than set";
      case 1 -> much + ", more liquid than set";
      default -> much + ", as set";
    };
  }
}
