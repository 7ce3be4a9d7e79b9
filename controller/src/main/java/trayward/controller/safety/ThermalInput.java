package trayward.controller.safety;

/**
 * What the watch over heat sees in one scan. Immutable.
 *
 * @param elapsedS time since the scan before, s
 * @param heatCommanded heater and safety relay were both commanded closed since that scan
 * @param state state of the interlock as that scan left it
 * @param bath newest good reading of the bath
 * @param plate newest good reading of the plate; {@link Sample#NONE} where no probe is fitted
 * @param second newest good reading of a second bath probe; {@link Sample#NONE} without one
 */
public record ThermalInput(
    double elapsedS, boolean heatCommanded, State state, Sample bath, Sample plate, Sample second) {

  /** Without a second bath probe. */
  public ThermalInput(
      double elapsedS, boolean heatCommanded, State state, Sample bath, Sample plate) {
    this(elapsedS, heatCommanded, state, bath, plate, Sample.NONE);
  }

  /**
   * A good reading.
   *
   * @param celsius value, °C; NaN before the first
   * @param takenNanos when that was true; a changed value marks a new reading
   */
  public record Sample(double celsius, long takenNanos) {

    /** No probe, or nothing read yet. */
    public static final Sample NONE = new Sample(Double.NaN, Long.MIN_VALUE);

    boolean known() {
      return !Double.isNaN(celsius);
    }
  }
}
