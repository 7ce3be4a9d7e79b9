package trayward.controller.app;

import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
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
import trayward.controller.station.StationTray;

/**
 * The running controller as its station sees it. What writes to the disk or fits a tray is done on
 * a thread of its own, so that the line never waits for it.
 */
final class StationWork implements StationTray, AutoCloseable {

  /** The station lets one command wait at a time; a stop may overtake it. */
  private static final int WAITING = 2;

  private final ControllerRuntime controller;
  private final boolean simulated;
  private final boolean hostAtTray;
  private final ThreadPoolExecutor work;

  StationWork(ControllerRuntime controller, boolean simulated, boolean hostAtTray) {
    this.controller = controller;
    this.simulated = simulated;
    this.hostAtTray = hostAtTray;
    this.work =
        new ThreadPoolExecutor(
            1,
            1,
            0,
            TimeUnit.SECONDS,
            new ArrayBlockingQueue<>(WAITING),
            task -> {
              Thread thread = new Thread(task, "station-work");
              thread.setDaemon(true);
              return thread;
            });
  }

  @Override
  public @Nullable Snapshot latest() {
    return controller.latest();
  }

  @Override
  public Mailbox mailbox() {
    return controller.mailbox();
  }

  @Override
  public EventBox events() {
    return controller.events();
  }

  @Override
  public HostPulse host() {
    return controller.host();
  }

  @Override
  public UpkeepDesk upkeep() {
    return controller.upkeep();
  }

  @Override
  public CalibrationDesk calibrations() {
    return controller.calibrator().desk();
  }

  @Override
  public Optional<LearnedTray> learned() {
    return controller.tray().known();
  }

  @Override
  public ScanTiming timing() {
    return controller.timing();
  }

  @Override
  public boolean simulated() {
    return simulated;
  }

  @Override
  public boolean hostAtTray() {
    return hostAtTray;
  }

  @Override
  public CompletableFuture<Answer> calibrateIce(ProbeRole role) {
    return later(() -> controller.calibrator().ice(role));
  }

  @Override
  public CompletableFuture<Answer> calibrateReference(
      ProbeRole role, double celsius, double statedK) {
    return later(() -> controller.calibrator().reference(role, celsius, statedK));
  }

  @Override
  public CompletableFuture<Answer> forgetCalibration(ProbeRole role) {
    return later(() -> controller.calibrator().forget(role));
  }

  @Override
  public CompletableFuture<Answer> calibrateTray(double litres) {
    return later(
        () -> {
          TrayDesk.Calibrated c = controller.tray().calibrate(litres);
          return new Answer(c.taken(), c.words(), false);
        });
  }

  @Override
  public CompletableFuture<Answer> upkeepDone(UpkeepItem item) {
    return later(
        () -> {
          String wrong = controller.upkeep().done(item);
          return wrong.isEmpty() ? Answer.DONE : Answer.refused(wrong);
        });
  }

  private CompletableFuture<Answer> later(Supplier<Answer> task) {
    try {
      return CompletableFuture.supplyAsync(task, work)
          .exceptionally(e -> Answer.refused("the controller failed at it: " + e.getMessage()));
    } catch (RejectedExecutionException e) {
      return CompletableFuture.completedFuture(Answer.refused("busy: ask again"));
    }
  }

  @Override
  public void close() {
    work.shutdownNow();
  }
}
