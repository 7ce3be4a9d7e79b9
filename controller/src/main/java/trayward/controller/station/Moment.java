package trayward.controller.station;

import java.util.Optional;
import trayward.controller.keep.CalibrationDesk;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.UpkeepReport;
import trayward.controller.scan.ScanTiming;
import trayward.controller.scan.Snapshot;

/**
 * What one request is served from. Immutable but for the calibrations, which change only where a
 * person calibrates.
 *
 * @param now the newest snapshot
 * @param events the newest events
 * @param answer what became of the last command
 * @param upkeep due dates of maintenance
 * @param startUnconfirmed why a start must be confirmed, in words; empty where it need not be
 * @param calibrations what is known of the probes
 * @param learned what is on record of the tray
 * @param lateness how late scans came
 * @param simulated whether the tray is simulated
 */
record Moment(
    Snapshot now,
    EventTail.Tail events,
    CommandResult answer,
    UpkeepReport upkeep,
    String startUnconfirmed,
    CalibrationDesk calibrations,
    Optional<LearnedTray> learned,
    ScanTiming.Lateness lateness,
    boolean simulated) {}
