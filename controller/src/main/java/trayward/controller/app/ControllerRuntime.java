package trayward.controller.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import trayward.controller.keep.AlarmRecord;
import trayward.controller.keep.CalibrationDesk;
import trayward.controller.keep.FileKeepStore;
import trayward.controller.keep.FolderClaim;
import trayward.controller.keep.KeepStore;
import trayward.controller.keep.UpkeepDesk;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.WallClock;
import trayward.controller.safety.Limit;
import trayward.controller.scan.EventBox;
import trayward.controller.scan.HostPulse;
import trayward.controller.scan.Mailbox;
import trayward.controller.scan.Scan;
import trayward.controller.scan.ScanLoop;
import trayward.controller.scan.ScanTiming;
import trayward.controller.scan.Snapshot;

/**
 * A controller that runs in real time: wires the adapters of a configuration to the scan loop.
 * Made, started and closed by one thread; the rest may be called from any.
 */
public final class ControllerRuntime implements AutoCloseable {

  /** A small or busy board is slow the first time it runs anything; a second was not enough. */
  private static final long FIRST_SCAN_S = 10;

  private static final String KEEP_FILE = "controller-keep.txt";
  private static final String UPKEEP_FILE = "controller-upkeep.txt";
  private static final String ALARM_FILE = "controller-alarms.txt";
  private static final String OLD_ALARM_FILE = "controller-alarms.old.txt";
  private static final String LEARNED_FILE = "controller-learned.txt";
  private static final String CALIBRATION_FILE = "controller-calibration.txt";

  private final FolderClaim claim;
  private final UpkeepDesk upkeep;
  private final UpkeepThread counting;
  private final FitThread fits;
  private final AlarmRecord alarms;
  private final ProbeCalibrator calibrator;
  private final TrayDesk tray;
  private final TrayThread lessons;
  private final AlarmThread alarmThread;
  private final Watchdogs watchdogs;
  private final Mailbox mailbox;
  private final EventBox events = new EventBox();
  private final HostPulse host = new HostPulse();
  private final KeepStore store;
  private final Scan scan;
  private final ScanLoop loop;
  private final Wiring wiring;
  private final CountDownLatch firstScan = new CountDownLatch(1);
  private boolean closed;

  /**
   * Wires a controller.
   *
   * @param settings the checked configuration
   * @param clock monotonic time
   * @param wallClock date and time of day, for due dates and records only (SR-22)
   * @param onFailure told when a scan fails, after outputs are off (SR-17)
   * @throws ConfigRefused where the data folder or the lines of a Pi cannot be used
   */
  public ControllerRuntime(
      Settings settings, MonotonicClock clock, WallClock wallClock, Consumer<Throwable> onFailure)
      throws ConfigRefused {
    Path folder = dataFolder(settings.logFolder());
    this.claim = claim(folder);
    long now = clock.nanos();
    this.wiring = wired(settings, clock, now, claim);
    this.store = new FileKeepStore(folder.resolve(KEEP_FILE));
    this.upkeep = new UpkeepDesk(folder.resolve(UPKEEP_FILE), settings.upkeep(), wallClock);
    this.alarms = new AlarmRecord(folder.resolve(ALARM_FILE), folder.resolve(OLD_ALARM_FILE));
    this.mailbox = new Mailbox(upkeep::startUnconfirmed);
    CalibrationDesk calibrations =
        new CalibrationDesk(folder.resolve(CALIBRATION_FILE), settings.fittedProbes(), wallClock);
    this.fits = new FitThread();
    this.tray =
        new TrayDesk(
            folder.resolve(LEARNED_FILE), settings.trayName(), settings.model(), wallClock);
    this.scan =
        new Scan(
            TrayTables.scanSettings(
                settings.limits(),
                settings.fan(),
                settings.control(),
                settings.secondBathFitted(),
                settings.plateFitted(),
                settings.model(),
                settings.room(),
                tray.prior().belief().model()),
            wiring.lines(),
            wiring.probes(),
            calibrations.corrections(),
            wiring.outputs(),
            Regulators.of(
                settings.control(),
                settings.plateFitted(),
                tray.prior(),
                settings.room(),
                settings.limits(),
                fits),
            store,
            mailbox,
            events,
            host,
            now);
    this.loop = new ScanLoop(scan, clock, onFailure, firstScan::countDown);
    this.calibrator = new ProbeCalibrator(calibrations, mailbox, loop::latest);
    this.lessons = new TrayThread(tray, loop::latest);
    this.counting = new UpkeepThread(upkeep, loop::latest, settings.limits().get(Limit.WARM_C));
    this.alarmThread = new AlarmThread(events.alarms(), alarms, loop::latest, wallClock);
    this.watchdogs = new Watchdogs(settings.watchdog(), loop::latest);
  }

  /** The adapters; where they cannot be had the folder is given back. */
  private static Wiring wired(
      Settings settings, MonotonicClock clock, long nowNanos, FolderClaim claim)
      throws ConfigRefused {
    try {
      return Wiring.of(settings, Wiring.Purpose.RUN, clock, nowNanos);
    } catch (ConfigRefused e) {
      claim.close();
      throw e;
    }
  }

  /** The data folder, made where there is none. */
  static Path dataFolder(Path folder) throws ConfigRefused {
    try {
      return Files.createDirectories(folder);
    } catch (IOException e) {
      throw new ConfigRefused(
          "log.folder: found '" + folder + "', accepted is a folder that can be written to");
    }
  }

  /** The data folder of one controller; {@code folder} exists. */
  static FolderClaim claim(Path folder) throws ConfigRefused {
    try {
      return FolderClaim.take(folder);
    } catch (IOException e) {
      throw new ConfigRefused(
          "log.folder: found '"
              + folder
              + "' ("
              + e.getMessage()
              + "), accepted is a folder that no other controller uses");
    }
  }

  /**
   * Tries a scan in memory, starts the probes and the loop, waits for the first scan, at most ten
   * seconds, and then arms what watches from outside: not before, as a computer that starts slowly
   * would be restarted. Told to end while it begins, it does nothing.
   *
   * @throws ConfigRefused where a watchdog cannot be armed; close it then
   */
  public void start() throws ConfigRefused {
    if (!begun()) {
      return;
    }
    boolean came = false;
    try {
      came = firstScan.await(FIRST_SCAN_S, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      came = true; // told to end: what waits here does not say why
    }
    arm(came);
  }

  private synchronized void arm(boolean came) throws ConfigRefused {
    if (closed) {
      return;
    }
    if (!came) {
      throw new IllegalStateException("the first scan did not come within " + FIRST_SCAN_S + " s");
    }
    watchdogs.arm(System.getenv());
  }

  /** Starts what runs, unless it was closed before: a program may be ended while it begins. */
  private synchronized boolean begun() {
    if (closed) {
      return false;
    }
    var unused = DryRun.run();
    wiring.start();
    loop.start();
    counting.start();
    alarmThread.start();
    lessons.start();
    return true;
  }

  /** The newest snapshot; null before the first scan. */
  public @Nullable Snapshot latest() {
    return loop.latest();
  }

  /** Where requests go. */
  public Mailbox mailbox() {
    return mailbox;
  }

  /** The due dates of maintenance (SR-23). */
  public UpkeepDesk upkeep() {
    return upkeep;
  }

  /** Calibrations of the probes, and the way to take one. */
  public ProbeCalibrator calibrator() {
    return calibrator;
  }

  /** What is remembered of the tray, and the calibration with a measured litre. */
  public TrayDesk tray() {
    return tray;
  }

  /** The durable record of alarms. */
  public AlarmRecord alarms() {
    return alarms;
  }

  /** Where events come from. */
  public EventBox events() {
    return events;
  }

  /** Where the host shows that it lives. */
  public HostPulse host() {
    return host;
  }

  /** How late scans come. */
  public ScanTiming timing() {
    return loop.timing();
  }

  /** Heat off, watchdog line silent, record written. The fan line stays as SR-21 had it. */
  @Override
  public void close() {
    synchronized (this) {
      closed = true;
    }
    loop.close();
    watchdogs.end(loop.idle());
    wiring.close();
    fits.close();
    lessons.close();
    store.close();
    counting.close();
    alarmThread.close();
    claim.close();
  }
}
