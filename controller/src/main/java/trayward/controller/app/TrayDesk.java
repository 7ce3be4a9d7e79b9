package trayward.controller.app;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.controller.keep.LearnedFile;
import trayward.controller.keep.LearnedTray;
import trayward.controller.port.WallClock;
import trayward.controller.regulate.LitreCalibration;
import trayward.controller.regulate.TrayLesson;
import trayward.controller.regulate.TrayModel;

/**
 * Remembers what warm-ups teach of a tray, within {@link LearnedBounds}, and takes the one-time
 * calibration with a measured litre. What it remembers steers from the next start on. Safe on any
 * thread but the scan's: it fits and writes to the disk.
 */
public final class TrayDesk {

  private static final Logger LOG = LoggerFactory.getLogger(TrayDesk.class);

  private final LearnedFile file;
  private final String name;
  private final TrayModel declared;
  private final TrayPrior prior;
  private volatile Optional<LearnedTray> known;
  private @Nullable TrayLesson last;
  private double waitingL = Double.NaN;

  /**
   * What became of a calibration.
   *
   * @param taken whether it was taken
   * @param words what became of it, for a person
   */
  public record Calibrated(boolean taken, String words) {}

  /**
   * Opens the record.
   *
   * @param file the record, whose folder must exist
   * @param name name of the tray
   * @param declared the tray as declared
   * @param clock for the dates
   */
  TrayDesk(Path file, String name, TrayModel declared, WallClock clock) {
    this.file = new LearnedFile(file, clock);
    this.name = name;
    this.declared = declared;
    this.known = Optional.ofNullable(this.file.trays().get(name)).filter(this::believable);
    this.prior = TrayPrior.of(declared, known);
  }

  private boolean believable(LearnedTray tray) {
    String wrong = LearnedBounds.wrong(tray, declared.areaM2());
    if (!wrong.isEmpty()) {
      LOG.error("what is on record of tray {} is not used: {}", name, wrong);
    }
    return wrong.isEmpty();
  }

  /** What the regulator begins with. */
  TrayPrior prior() {
    return prior;
  }

  /** What is on record of this tray. */
  public Optional<LearnedTray> known() {
    return known;
  }

  /** A lesson as the newest snapshot has it: once it is complete, it is judged and remembered. */
  synchronized void see(TrayLesson lesson) {
    if (!lesson.complete() || lesson.equals(last)) {
      return;
    }
    last = lesson;
    String wrong =
        Double.isNaN(waitingL)
            ? take(prior.proposal(name, file.today(), declared.heaterW(), lesson.found()))
            : measured(lesson, waitingL);
    waitingL = Double.NaN;
    if (wrong.isEmpty()) {
      LOG.info("tray {}: the warm-up is remembered for the next start", name);
    } else {
      LOG.warn("tray {}: the warm-up is not remembered: {}", name, wrong);
    }
  }

  /**
   * The warm-up just learned, or else the next one, is done with exactly this much in the tray.
   * Takes up to some seconds.
   *
   * @param litres measured, L
   */
  public synchronized Calibrated calibrate(double litres) {
    if (!LitreCalibration.LITRES.contains(litres)) {
      return new Calibrated(false, LitreCalibration.LITRES.words());
    }
    TrayLesson lesson = last;
    if (lesson == null) {
      waitingL = litres;
      return new Calibrated(true, "the next whole warm-up counts as done with that much");
    }
    String wrong = measured(lesson, litres);
    return wrong.isEmpty()
        ? new Calibrated(true, "the warm-up just learned counts as done with that much")
        : new Calibrated(false, wrong);
  }

  private String measured(TrayLesson lesson, double litres) {
    return take(
        TrayPrior.measuredBy(
            name, file.today(), declared.heaterW(), LitreCalibration.refit(lesson, litres)));
  }

  private String take(LearnedTray proposal) {
    String wrong = LearnedBounds.wrong(proposal, declared.areaM2());
    if (wrong.isEmpty()) {
      wrong = file.save(proposal);
    }
    if (wrong.isEmpty()) {
      known = Optional.of(proposal);
    }
    return wrong;
  }
}
