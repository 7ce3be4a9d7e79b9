package trayward.controller.regulate;

/**
 * What a fit found. Immutable but for the run, which its reader owns.
 *
 * @param job what was asked
 * @param belief the tray
 * @param doubt how unsure that is
 * @param run the tray run to the last whole second of the readings
 * @param rmsK root mean square of what the readings differ from it, K
 * @param point where it stands, for the next fit of the same log to begin from
 */
public record FitResult(
    FitJob job, TrayBelief belief, TrayDoubt doubt, TrayRun run, double rmsK, FitPoint point) {}
