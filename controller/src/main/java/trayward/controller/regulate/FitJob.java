package trayward.controller.regulate;

/**
 * A fit to be done: the readings of a warm-up and what was believed before it. Immutable but for
 * the log behind the view, of which only what no longer changes is read.
 *
 * @param view the readings
 * @param room the room
 * @param prior what was believed before this warm-up
 * @param doubt how unsure that is
 * @param plateStartC plate at the log's beginning, °C
 * @param bathStartC bath there, °C
 * @param from where an earlier fit of this log ended, or the prior
 */
public record FitJob(
    WarmUpLog.View view,
    RoomModel room,
    TrayBelief prior,
    TrayDoubt doubt,
    double plateStartC,
    double bathStartC,
    FitPoint from) {

  /** Rounds taken while a warm-up goes on: the next fit continues from where this one ended. */
  private static final int ROUNDS = 4;

  /** Rounds of a fit nobody waits for; it ends sooner where it stands still. */
  private static final int THOROUGH = 40;

  /** Does it to the end. Takes ten times as long as {@link #run} at the most. */
  public FitResult runThorough() {
    return TrayFit.fit(this, THOROUGH);
  }

  /** Does it. Takes some milliseconds for each ten minutes of readings. */
  public FitResult run() {
    return TrayFit.fit(this, ROUNDS);
  }
}
