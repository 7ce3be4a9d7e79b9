package trayward.host.forecast;

/**
 * What the coming print goes into. Immutable.
 *
 * @param bathC bath temperature, °C; NaN where it is not known
 * @param features what else is known
 */
public record Conditions(double bathC, Features features) {

  /** The same bath at another temperature. */
  public Conditions at(double otherC) {
    return new Conditions(otherC, features);
  }
}
