package trayward.controller.app;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import trayward.controller.calibrate.Calibration;
import trayward.controller.calibrate.Stand;
import trayward.controller.keep.CalibrationDesk;
import trayward.controller.port.ProbeRole;
import trayward.controller.scan.Answer;
import trayward.controller.scan.Mailbox;
import trayward.controller.scan.ProbeView;
import trayward.controller.scan.Snapshot;

/**
 * Takes a calibration where a person asks for it: judged by how the probe has stood, put on record,
 * then asked of the scan, which alone applies it. One asker at a time; any thread but the scan's.
 */
public final class ProbeCalibrator {

  /** A scan answers within two periods; longer means there is none. */
  private static final long PATIENCE_MS = 2000;

  private final CalibrationDesk desk;
  private final Mailbox mailbox;
  private final Supplier<@Nullable Snapshot> latest;

  ProbeCalibrator(CalibrationDesk desk, Mailbox mailbox, Supplier<@Nullable Snapshot> latest) {
    this.desk = desk;
    this.mailbox = mailbox;
    this.latest = latest;
  }

  /** What is on record. */
  public CalibrationDesk desk() {
    return desk;
  }

  /** The probe hangs in melting ice. */
  public synchronized Answer ice(ProbeRole role) {
    return take(role, stand -> desk.withIce(role, stand));
  }

  /**
   * The probe hangs beside a thermometer.
   *
   * @param celsius what that shows, °C, within {@link Calibration#REFERENCE_C}
   * @param statedK its expanded uncertainty, k = 2, within {@link Calibration#STATED_K}, K
   */
  public synchronized Answer reference(ProbeRole role, double celsius, double statedK) {
    if (!Calibration.REFERENCE_C.contains(celsius)) {
      return Answer.refused("a reference is " + Calibration.REFERENCE_C.words());
    }
    if (!Calibration.STATED_K.contains(statedK)) {
      return Answer.refused("its uncertainty is " + Calibration.STATED_K.words());
    }
    return take(role, stand -> desk.withReference(role, celsius, statedK, stand));
  }

  /** Forgets what is known of a probe: it counts as bought. */
  public synchronized Answer forget(ProbeRole role) {
    return put(role, Calibration.none(desk.probe(role)));
  }

  @FunctionalInterface
  private interface Taking {
    Calibration from(Stand stand);
  }

  private Answer take(ProbeRole role, Taking taking) {
    Snapshot now = latest.get();
    if (now == null) {
      return Answer.refused("the controller has not begun");
    }
    ProbeView probe = now.probes().of(role);
    if (!probe.reading().valid()) {
      return Answer.refused("the probe's reading is not valid: " + probe.reading().kind());
    }
    String notStill = probe.stand().notStill();
    if (!notStill.isEmpty()) {
      return Answer.refused(notStill);
    }
    Calibration next = taking.from(probe.stand());
    String implausible = next.implausible();
    return implausible.isEmpty() ? put(role, next) : Answer.refused(implausible);
  }

  private Answer put(ProbeRole role, Calibration next) {
    Snapshot now = latest.get();
    if (now != null && !now.rests()) {
      return Answer.refused(Mailbox.AT_REST_ONLY + now.state());
    }
    Calibration before = desk.onRecord(role); // an exchanged probe's too: it may come back
    if (!desk.save(role, next)) {
      return Answer.refused("the record of calibrations cannot be written");
    }
    Answer answer = applied(role, next);
    // What was not applied must not come into force at the next power-up.
    if (!answer.accepted() && !desk.save(role, before)) {
      return Answer.refused(
          answer.reason() + "; and the record, already written, cannot be taken back");
    }
    return answer;
  }

  private Answer applied(ProbeRole role, Calibration next) {
    try {
      return mailbox.correct(role, next.correction()).get(PATIENCE_MS, TimeUnit.MILLISECONDS);
    } catch (TimeoutException | ExecutionException e) {
      return Answer.refused("the controller did not answer");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Answer.refused("the program is being stopped");
    }
  }
}
