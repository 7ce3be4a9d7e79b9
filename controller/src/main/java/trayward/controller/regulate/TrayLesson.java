package trayward.controller.regulate;

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

  /** Liquid seen, L. Absolute only as far as the heater's watts are: the doubt says how far. */
  public double litres() {
    return found.belief().model().liquidL();
  }

  /** Standard deviation of {@link #litres}, L. */
  public double litresDoubt() {
    return litres() * found.doubt().liquid();
  }

  /** Whether there is less liquid than declared ({@code -1}), as much (0), or more (1). */
  public int against() {
    double off = Math.log(litres() / declaredL);
    boolean told = Math.abs(off) > Math.max(AS_SET, SURE * found.doubt().liquid());
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
