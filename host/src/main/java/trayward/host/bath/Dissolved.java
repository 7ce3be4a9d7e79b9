package trayward.host.bath;

/**
 * What is dissolved in a bath, in grams. Immutable.
 *
 * @param bromideG bromide as potassium bromide, g
 * @param sulfiteG sulfite as sodium sulfite, g
 * @param developerUsedG developer used up by prints, as hydroquinone, g
 */
public record Dissolved(Amount bromideG, Amount sulfiteG, Amount developerUsedG) {

  /** Nothing. */
  public static final Dissolved NOTHING = new Dissolved(Amount.ZERO, Amount.ZERO, Amount.ZERO);

  /** Both together. */
  public Dissolved plus(Dissolved more) {
    return new Dissolved(
        bromideG.plus(more.bromideG),
        sulfiteG.plus(more.sulfiteG),
        developerUsedG.plus(more.developerUsedG));
  }

  /** A share of it. */
  public Dissolved times(Amount share) {
    return new Dissolved(bromideG.times(share), sulfiteG.times(share), developerUsedG.times(share));
  }

  /** What is left when a share of it goes. */
  public Dissolved without(Amount share) {
    return new Dissolved(
        bromideG.without(share), sulfiteG.without(share), developerUsedG.without(share));
  }
}
