package trayward.controller.sim;

/**
 * Contacts between mains and heater: the cycling relay, the safety relay with its pulse-held coil,
 * and what can be wrong with them. Mutable; one thread.
 */
final class SimRelays {

  /** The safety contact drops this long after the last edge of the watchdog line, s. */
  static final double WATCHDOG_S = 1.0;

  private boolean heaterCoil;
  private boolean safetyCoil;
  private boolean pulse;
  private double lastEdgeS = Double.NEGATIVE_INFINITY;
  private boolean heaterWelded;
  private boolean safetyWelded;
  private boolean open;
  private long operations;

  void heaterCoil(boolean on) {
    if (on != heaterCoil) {
      operations++;
    }
    heaterCoil = on;
  }

  void safetyCoil(boolean on) {
    safetyCoil = on;
  }

  void pulse(boolean level, double nowS) {
    if (level != pulse) {
      lastEdgeS = nowS;
      pulse = level;
    }
  }

  boolean pulse() {
    return pulse;
  }

  boolean heaterContact() {
    return heaterCoil || heaterWelded;
  }

  boolean safetyContact(double nowS) {
    return safetyWelded || (safetyCoil && nowS - lastEdgeS < WATCHDOG_S);
  }

  /** True heater power for a heater of {@code heaterW}. */
  double heatW(double heaterW, double nowS) {
    return heaterContact() && safetyContact(nowS) && !open ? heaterW : 0;
  }

  void unpowered() {
    heaterCoil(false);
    safetyCoil = false;
    lastEdgeS = Double.NEGATIVE_INFINITY;
  }

  void heaterWelded(boolean on) {
    heaterWelded = on;
  }

  void safetyWelded(boolean on) {
    safetyWelded = on;
  }

  /** Heater element open or its breaker tripped: no current whatever the contacts do. */
  void open(boolean on) {
    open = on;
  }

  long operations() {
    return operations;
  }
}
