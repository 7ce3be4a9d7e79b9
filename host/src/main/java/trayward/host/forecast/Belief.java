package trayward.host.forecast;

/**
 * What is believed of one term before a person's own prints, and why. Immutable.
 *
 * @param term the term
 * @param mean expected coefficient, in the term's unit
 * @param doubt its standard deviation, above 0
 * @param basis where it comes from
 * @param reason why, in a clause
 */
public record Belief(Term term, double mean, double doubt, Basis basis, String reason) {

  /** Where a number comes from. */
  public enum Basis {
    /** What printers tell each other; no publication stands behind it. */
    COMMON_PRACTICE("common practice"),
    /** Ours. */
    JUDGEMENT("judgement");

    private final String word;

    Basis(String word) {
      this.word = word;
    }

    /** What it is called. */
    public String word() {
      return word;
    }
  }
}
