package trayward.controller.regulate;

/**
 * A warm-up out of a record: what a controller could have known of it. Added to in order of time,
 * then fitted. Mutable; one thread.
 */
public final class RecordedWarmUp {

  /** Longest that is taken in, s. */
  public static final int MAX_S = WarmUpLog.MAX_S;

  private final WarmUpLog log = new WarmUpLog(0);
  private final double plateStartC;
  private final double bathStartC;

  /** Begins at time 0 with plate and bath as they stand, °C. */
  public RecordedWarmUp(double plateStartC, double bathStartC) {
    this.plateStartC = plateStartC;
    this.bathStartC = bathStartC;
  }

  /** The heater was on or off for {@code elapsedS}. */
  public void heat(double elapsedS, boolean on) {
    log.heat(elapsedS, on);
  }

  /** The bath probe showed this, true at {@code atS}. */
  public void bath(double celsius, double atS) {
    log.bath(celsius, Math.round(atS * 1e9));
  }

  /** The plate probe likewise. */
  public void plate(double celsius, double atS) {
    log.plate(celsius, Math.round(atS * 1e9));
  }

  /** Whole seconds so far. */
  public int seconds() {
    return log.seconds();
  }

  /** What it shows of the tray. Takes up to some seconds. */
  public Identified fit(TrayBelief prior, TrayDoubt doubt, RoomModel room) {
    FitJob job =
        new FitJob(log.view(), room, prior, doubt, plateStartC, bathStartC, FitPoint.PRIOR);
    return Identified.of(job.runThorough());
  }
}
