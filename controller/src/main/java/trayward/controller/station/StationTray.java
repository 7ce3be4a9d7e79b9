package trayward.controller.station;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import trayward.controller.keep.CalibrationDesk;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.UpkeepDesk;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.port.ProbeRole;
import trayward.controller.scan.Answer;
import trayward.controller.scan.EventBox;
import trayward.controller.scan.HostPulse;
import trayward.controller.scan.Mailbox;
import trayward.controller.scan.ScanTiming;
import trayward.controller.scan.Snapshot;

/** The controller as its station sees it; whoever wires the controller gives it. Any thread. */
public interface StationTray {

  /** The newest snapshot; null before the first scan. */
  @Nullable Snapshot latest();

  /** Where requests go. */
  Mailbox mailbox();

  /** Where events come from; the station is their one reader. */
  EventBox events();

  /** Where the host shows that it lives. */
  HostPulse host();

  /** The due dates of maintenance. */
  UpkeepDesk upkeep();

  /** Calibrations on record. */
  CalibrationDesk calibrations();

  /** What is on record of the tray. */
  Optional<LearnedTray> learned();

  /** How late scans come. */
  ScanTiming timing();

  /** Whether the tray is simulated. */
  boolean simulated();

  /** Whether who uses the host stands at the tray, so that it may reset. */
  boolean hostAtTray();

  /** A probe hangs in melting ice. */
  CompletableFuture<Answer> calibrateIce(ProbeRole role);

  /** A probe hangs beside a thermometer that shows this, °C, within so much, K. */
  CompletableFuture<Answer> calibrateReference(ProbeRole role, double celsius, double statedK);

  /** Forgets what is known of a probe. */
  CompletableFuture<Answer> forgetCalibration(ProbeRole role);

  /** The warm-up just learned, or the next one, is done with exactly so much in the tray, L. */
  CompletableFuture<Answer> calibrateTray(double litres);

  /** A part was looked after today. */
  CompletableFuture<Answer> upkeepDone(UpkeepItem item);
}
