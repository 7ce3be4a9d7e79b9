package trayward.controller.keep;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import trayward.controller.calibrate.Calibration;
import trayward.controller.calibrate.Correction;
import trayward.controller.calibrate.Point;
import trayward.controller.calibrate.Stand;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.WallClock;

/**
 * Keeps what is known of each probe. The date of a point is for the record: nothing is decided by
 * it (SR-22). Safe on any thread; {@link #save} writes to the disk and is never the scan's.
 */
public final class CalibrationDesk {

  private static final long DAY_S = 24 * 3600;

  private final CalibrationFile file;
  private final Map<ProbeRole, String> probes;
  private final WallClock clock;
  private volatile CalibrationBook book;
  private volatile boolean readable;

  /**
   * Opens the record.
   *
   * @param file the record, whose folder must exist
   * @param probes what tells the probe in each place from another one
   * @param clock for the dates
   */
  public CalibrationDesk(Path file, Map<ProbeRole, String> probes, WallClock clock) {
    this.file = new CalibrationFile(file);
    this.probes = Map.copyOf(probes);
    this.clock = clock;
    CalibrationLoad load = this.file.load();
    this.readable = load instanceof CalibrationLoad.Loaded;
    this.book =
        load instanceof CalibrationLoad.Loaded loaded ? loaded.book() : CalibrationBook.EMPTY;
  }

  /** False where what is on the disk could not be believed: no probe is corrected. */
  public boolean readable() {
    return readable;
  }

  /** What tells this probe from another one. */
  public String probe(ProbeRole role) {
    return probes.getOrDefault(role, "");
  }

  /** What is known of the probe in a place. */
  public Calibration of(ProbeRole role) {
    return book.of(role, probe(role));
  }

  /** Whether what is on record belongs to a probe that hung there before. */
  public boolean ofAnother(ProbeRole role) {
    return book.ofAnother(role, probe(role));
  }

  /** What is on record for a place, also where it is another probe's. */
  public Calibration onRecord(ProbeRole role) {
    return book.byRole().getOrDefault(role, Calibration.none(probe(role)));
  }

  /** What each probe is corrected by. */
  public Map<ProbeRole, Correction> corrections() {
    Map<ProbeRole, Correction> all = new EnumMap<>(ProbeRole.class);
    for (ProbeRole role : ProbeRole.values()) {
      all.put(role, of(role).correction());
    }
    return all;
  }

  /** What would be known with an ice point taken now. */
  public Calibration withIce(ProbeRole role, Stand stand) {
    return of(role).withIce(Point.ice(stand, today()));
  }

  /** What would be known with a reference taken now. */
  public Calibration withReference(ProbeRole role, double celsius, double statedK, Stand stand) {
    return of(role).withReference(Point.reference(celsius, statedK, stand, today()));
  }

  private long today() {
    return Math.floorDiv(clock.epochSeconds(), DAY_S);
  }

  /** Puts this on record; false where that failed, and all is as it was. */
  public synchronized boolean save(ProbeRole role, Calibration calibration) {
    CalibrationBook next = book.with(role, calibration);
    if (!file.save(next)) {
      return false;
    }
    book = next;
    readable = true;
    return true;
  }
}
