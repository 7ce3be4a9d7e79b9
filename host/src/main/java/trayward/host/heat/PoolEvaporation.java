package trayward.host.heat;

/**
 * What an open bath loses to the air as vapour, by the pool correlation of the ASHRAE handbook
 * (HVAC Applications, natatoriums; Carrier 1918), in SI units:
 *
 * <pre>
 *   Q = f A (0.089 + 0.0782 v) max(0, pw(bath) - phi pw(room))     kW, m², m/s, kPa
 * </pre>
 *
 * <p>It was made for pools: undisturbed ones were measured at {@value #UNDISTURBED} of it (ASHRAE
 * Transactions 1998, vol. 104, pt. 1A, abstract). Take it as an estimate. Nothing condenses here: a
 * bath colder than the dew point loses nothing. Immutable; safe on any thread.
 *
 * @param areaM2 free surface, m², above 0 up to {@value #AREA_MAX_M2}
 * @param draughtMPerS air speed over it, m/s, 0 to {@value #DRAUGHT_MAX_M_PER_S}
 * @param roomC temperature of the room, °C, -10 to 45
 * @param relativeHumidity of the room, 0 to 1
 * @param factor share of the correlation: 1 as it is, {@value #UNDISTURBED} for a bath nobody
 *     rocks, 0 under a cover, up to {@value #FACTOR_MAX}
 */
public record PoolEvaporation(
    double areaM2, double draughtMPerS, double roomC, double relativeHumidity, double factor) {

  /** Share of the correlation that was measured over undisturbed pools. */
  public static final double UNDISTURBED = 0.74;

  /** Largest surface: a sink of one metre by two. */
  public static final double AREA_MAX_M2 = 2;

  /** Strongest draught: a fresh breeze begins there. */
  public static final double DRAUGHT_MAX_M_PER_S = 5;

  /** Largest factor: a tray learned at more is something else. */
  public static final double FACTOR_MAX = 10;

  /** Refuses what is out of range. */
  public PoolEvaporation {
    if (!(areaM2 > 0 && areaM2 <= AREA_MAX_M2)
        || !(draughtMPerS >= 0 && draughtMPerS <= DRAUGHT_MAX_M_PER_S)
        || !(roomC >= -10 && roomC <= 45)
        || !(relativeHumidity >= 0 && relativeHumidity <= 1)
        || !(factor >= 0 && factor <= FACTOR_MAX)) {
      throw new IllegalArgumentException(
          "no evaporating bath: "
              + areaM2
              + " m², "
              + draughtMPerS
              + " m/s, "
              + roomC
              + " °C, humidity "
              + relativeHumidity
              + ", factor "
              + factor);
    }
  }

  /** The same under a cover. */
  public PoolEvaporation covered() {
    return new PoolEvaporation(areaM2, draughtMPerS, roomC, relativeHumidity, 0);
  }

  /** Difference of vapour pressures between surface and room, kPa, 0 or more. */
  public double deficitKPa(double bathC) {
    return Math.max(0, Water.saturationKPa(bathC) - relativeHumidity * Water.saturationKPa(roomC));
  }

  /** Heat that goes with the vapour, W, at a bath of 0 to 100 °C. */
  public double wattsAt(double bathC) {
    return wattsPerKPa() * deficitKPa(bathC);
  }

  private double wattsPerKPa() {
    return factor * 1000 * areaM2 * (0.089 + 0.0782 * draughtMPerS);
  }

  /**
   * Air that touches the surface, m³/h: so much of it would carry off as much vapour, were it dry
   * when it came and saturated when it went. It carries other vapours too.
   */
  public double carriedM3PerHAt(double bathC) {
    double gramsPerHPerKPa = wattsPerKPa() * 3600 / Water.latentJPerG(bathC);
    return gramsPerHPerKPa * Water.saturationKPa(bathC) / Water.saturatedAirGPerM3(bathC);
  }

  /** Water that goes, g/h. */
  public double gramsPerHourAt(double bathC) {
    return wattsAt(bathC) * 3600 / Water.latentJPerG(bathC);
  }

  /** Water that goes, mL/h, as it is poured back: measured at room temperature. */
  public double millilitresPerHourAt(double bathC) {
    return gramsPerHourAt(bathC) * 1000 / Water.densityGPerL(roomC);
  }
}
