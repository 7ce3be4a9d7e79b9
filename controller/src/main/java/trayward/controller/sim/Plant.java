package trayward.controller.sim;

/**
 * The thermal truth: temperatures and liquid, advanced by the classical Runge-Kutta method.
 * Mutable; one thread.
 *
 * <p>The fastest time constant of any tray allowed is above 10 s, so a step of 0.1 s leaves an
 * error far below a microkelvin; a test compares with an adaptive solver of a mathematics library.
 */
public final class Plant {

  /** Liquid that cannot be poured away, L: keeps the bath's heat capacity above zero. */
  static final double MIN_LIQUID_L = 0.02;

  private final PlantParameters parameters;
  private final double airKPa;
  private final double[] y = new double[3];
  private final double[] k1 = new double[3];
  private final double[] k2 = new double[3];
  private final double[] k3 = new double[3];
  private final double[] k4 = new double[3];
  private final double[] at = new double[3];
  // The end of a step is the beginning of the next: the vapour pressure there is kept.
  private double vapourAtC = Double.NaN;
  private double vapourKPa;
  private double liquidL;
  private double evaporatedMl;
  private double energyJ;
  private boolean covered;
  private boolean dry;

  /** A plant at its start. */
  public Plant(PlantParameters parameters) {
    this.parameters = parameters;
    this.airKPa = HeatFlow.airKPa(parameters);
    this.liquidL = Math.max(MIN_LIQUID_L, parameters.liquidL());
    this.covered = parameters.covered();
    java.util.Arrays.fill(y, parameters.startC());
  }

  /** A copy of {@code other} as it stands now, for looking ahead. */
  public Plant(Plant other) {
    this.parameters = other.parameters;
    this.airKPa = other.airKPa;
    System.arraycopy(other.y, 0, y, 0, 3);
    this.liquidL = other.liquidL;
    this.evaporatedMl = other.evaporatedMl;
    this.energyJ = other.energyJ;
    this.covered = other.covered;
    this.dry = other.dry;
  }

  /** Plate temperature, °C. */
  public double plateC() {
    return y[0];
  }

  /** Bath temperature, °C. */
  public double bathC() {
    return y[1];
  }

  /** Liquid in the tray, L. */
  public double liquidL() {
    return liquidL;
  }

  /** Water evaporated so far, mL. */
  public double evaporatedMl() {
    return evaporatedMl;
  }

  /** Electrical energy put in so far, J. */
  public double energyJ() {
    return energyJ;
  }

  /** The fixed properties. */
  public PlantParameters parameters() {
    return parameters;
  }

  /** A cover stops evaporation. */
  public void cover(boolean on) {
    covered = on;
  }

  /** Whether the tray is covered now. */
  public boolean covered() {
    return covered;
  }

  /** A dry or lifted tray takes no heat from the plate and gives off no vapour. */
  public void dry(boolean on) {
    dry = on;
  }

  /** Half of the liquid gone. */
  public void halve() {
    liquidL = Math.max(MIN_LIQUID_L, liquidL / 2);
  }

  /** Liquid back to what was in the tray before a fault took it, L. */
  public void refill(double litres) {
    liquidL = Math.max(MIN_LIQUID_L, litres);
  }

  /** Pours in liquid that mixes ideally and at once. */
  public void pour(double litres, double celsius) {
    mix(HeatFlow.LITRE_J_PER_K * litres, celsius);
    liquidL += litres;
  }

  /** A cold sheet: a lump that mixes at once and is taken out again with its heat. */
  public void sheet(double heatCapacityJPerK, double celsius) {
    mix(heatCapacityJPerK, celsius);
  }

  private void mix(double capacity, double celsius) {
    double bath = bathJPerK();
    y[1] = (bath * y[1] + capacity * celsius) / (bath + capacity);
  }

  private double bathJPerK() {
    return HeatFlow.LITRE_J_PER_K * liquidL;
  }

  /** Advances by {@code hS} seconds with constant heater power {@code heatW}. */
  public void advance(double hS, double heatW) {
    double f = covered || dry ? 0 : parameters.evaporationFactor();
    double coupling = dry ? 0 : parameters.plateToBathWPerK();
    double before = evaporationW(f, y[1]);
    // The liquid in the middle of the step: that of its beginning would cost some microkelvins.
    double bathJPerK = HeatFlow.LITRE_J_PER_K * (liquidL - lostL(hS / 2, before));
    rates(heatW, coupling, bathJPerK, f, y, k1);
    offset(k1, hS / 2);
    rates(heatW, coupling, bathJPerK, f, at, k2);
    offset(k2, hS / 2);
    rates(heatW, coupling, bathJPerK, f, at, k3);
    offset(k3, hS);
    rates(heatW, coupling, bathJPerK, f, at, k4);
    for (int i = 0; i < 3; i++) {
      y[i] += hS / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
    }
    evaporate(hS, 0.5 * (before + evaporationW(f, y[1])));
    energyJ += heatW * hS;
  }

  private void rates(
      double heatW, double coupling, double bathJPerK, double f, double[] state, double[] rate) {
    HeatFlow.lossRates(
        parameters, heatW, coupling, bathJPerK, evaporationW(f, state[1]), state, rate);
  }

  private double evaporationW(double f, double bathC) {
    if (bathC != vapourAtC) {
      vapourAtC = bathC;
      vapourKPa = HeatFlow.saturationKPa(bathC);
    }
    return HeatFlow.lossW(parameters, f, vapourKPa - airKPa);
  }

  private void evaporate(double hS, double lossW) {
    double litres = lostL(hS, lossW);
    evaporatedMl += litres * 1000;
    liquidL -= litres;
  }

  /** Liquid that {@code lossW} takes away in {@code hS}, L; 1 g of water is taken as 1 mL. */
  private double lostL(double hS, double lossW) {
    double litres = lossW * hS / HeatFlow.latentJPerG(y[1]) / 1000;
    return Math.max(0, Math.min(litres, liquidL - MIN_LIQUID_L));
  }

  private void offset(double[] rate, double h) {
    for (int i = 0; i < 3; i++) {
      at[i] = y[i] + h * rate[i];
    }
  }
}
