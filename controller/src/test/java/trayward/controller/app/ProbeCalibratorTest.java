package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.calibrate.Correction;
import trayward.controller.calibrate.Stand;
import trayward.controller.keep.CalibrationDesk;
import trayward.controller.keep.MemoryKeepStore;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.regulate.PidRegulator;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.Limits;
import trayward.controller.safety.Request;
import trayward.controller.scan.Answer;
import trayward.controller.scan.EventBox;
import trayward.controller.scan.HostPulse;
import trayward.controller.scan.Mailbox;
import trayward.controller.scan.Scan;
import trayward.controller.scan.ScanSettings;
import trayward.controller.scan.Snapshot;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.ProbeParameters;
import trayward.controller.sim.SimulatedTray;

/** Calibrations taken on a simulated tray whose bath probe reads 0.7 K high, with a real file. */
@Timeout(60)
class ProbeCalibratorTest {

  private static final double HIGH_K = 0.7;

  @TempDir private Path folder;
  private final Map<ProbeRole, Double> hangsIn = new EnumMap<>(ProbeRole.class);
  private final Mailbox mailbox = new Mailbox();
  private final SimulatedTray tray =
      new SimulatedTray(
          PlantParameters.REFERENCE,
          new ProbeParameters(true, 5, 0.02, HIGH_K),
          ProbeParameters.NO_SECOND,
          ProbeParameters.PLATE,
          1,
          0);
  private long now;
  private volatile @Nullable Snapshot last;
  private Scan scan = scan(Map.of());

  private Path file() {
    return folder.resolve("controller-calibration.txt");
  }

  private CalibrationDesk desk() {
    return new CalibrationDesk(file(), Map.of(ProbeRole.BATH, "simulated"), () -> 1_790_000_000L);
  }

  private ProbeCalibrator calibrator() {
    return new ProbeCalibrator(desk(), mailbox, () -> last);
  }

  private Scan scan(Map<ProbeRole, Correction> corrections) {
    ScanSettings settings =
        new ScanSettings(
            Limits.STANDARD,
            1500,
            4,
            true,
            true,
            false,
            true,
            40,
            5,
            0.5,
            false,
            TrayModel.REFERENCE,
            RoomModel.REFERENCE);
    return new Scan(
        settings,
        tray,
        this::reading,
        corrections,
        tray.outputs(),
        new PidRegulator(TrayModel.REFERENCE, RoomModel.REFERENCE, 68),
        new MemoryKeepStore(),
        mailbox,
        new EventBox(),
        new HostPulse(),
        now);
  }

  /** The tray's own reading, or that of a probe which hangs in something else. */
  private RawReading reading(ProbeRole role, long nowNanos) {
    RawReading own = tray.latest(role, nowNanos);
    Double other = hangsIn.get(role);
    return other == null ? own : RawReading.frame(other, own.takenNanos());
  }

  private Snapshot run(double seconds) {
    for (long left = Math.round(seconds * 10); left > 0; left--) {
      now += 100_000_000L;
      last = scan.run(now);
    }
    return java.util.Objects.requireNonNull(last);
  }

  /** Asks on a thread of its own, as the page does; the scan goes on while that waits for it. */
  private Answer ask(Supplier<Answer> asked) {
    CompletableFuture<Answer> answer = new CompletableFuture<>();
    Thread asker = new Thread(() -> answer.complete(asked.get()), "asker");
    asker.start();
    while (!answer.isDone()) {
      if (asker.getState() == Thread.State.TIMED_WAITING) {
        run(0.1);
      }
      Thread.onSpinWait();
    }
    return answer.join();
  }

  /** The bath of the simulated tray stands at 20 °C, and its probe says 20.7 °C. */
  @Test
  void aReferenceAgainstAThermometerPutsASimulatedProbeRight() {
    ProbeCalibrator calibrator = calibrator();
    assertEquals(20.7, run(60).bath().celsius(), 0.1);
    double trueC = tray.plant().bathC();
    assertEquals(Answer.DONE, ask(() -> calibrator.reference(ProbeRole.BATH, trueC, 0.1)));
    assertEquals(tray.plant().bathC(), run(2).bath().celsius(), 0.1);
    assertEquals(0.13, calibrator.desk().of(ProbeRole.BATH).uncertaintyK(trueC), 0.03);
  }

  @Test
  void itOutlivesARestartAndIsForgottenWhenAsked() {
    run(60);
    hangsIn.put(ProbeRole.BATH, 0.6875);
    run(60);
    ProbeCalibrator calibrator = calibrator();
    assertEquals(Answer.DONE, ask(() -> calibrator.ice(ProbeRole.BATH)));
    assertEquals(0, run(2).bath().celsius(), 1e-9);
    scan = scan(desk().corrections());
    assertEquals(0, run(2).bath().celsius(), 1e-9);
    assertEquals(Answer.DONE, ask(() -> calibrator.forget(ProbeRole.BATH)));
    assertEquals(0.6875, run(2).bath().celsius());
    assertEquals(Correction.NONE, desk().corrections().get(ProbeRole.BATH));
  }

  @Test
  void iceAndReferenceMakeALine() {
    ProbeCalibrator calibrator = calibrator();
    run(10);
    hangsIn.put(ProbeRole.BATH, 0.5);
    run(60);
    assertEquals(Answer.DONE, ask(() -> calibrator.ice(ProbeRole.BATH)));
    hangsIn.put(ProbeRole.BATH, 40.0);
    run(60);
    assertEquals(Answer.DONE, ask(() -> calibrator.reference(ProbeRole.BATH, 39.9, 0.1)));
    assertEquals(39.9, run(1).bath().celsius(), 1e-9);
    assertEquals(39.9 / 39.5, last().probes().bath().correction().slope(), 1e-9);
  }

  private Snapshot last() {
    return java.util.Objects.requireNonNull(last);
  }

  @Test
  void whatIsNotIceIsRefusedInASentenceAndNothingChanges() {
    ProbeCalibrator calibrator = calibrator();
    run(60);
    Answer answer = ask(() -> calibrator.ice(ProbeRole.BATH));
    assertFalse(answer.accepted());
    assertTrue(answer.reason().startsWith("the probe read 20."), answer.reason());
    assertFalse(Files.exists(file()));
    assertEquals(Correction.NONE, run(1).probes().bath().correction());
  }

  @Test
  void aReadingThatDidNotStandStillIsRefused() {
    ProbeCalibrator calibrator = calibrator();
    run(20);
    assertTrue(ask(() -> calibrator.ice(ProbeRole.BATH)).reason().contains("so far"));
    run(40);
    hangsIn.put(ProbeRole.BATH, 20.9375);
    run(10);
    Answer moved = ask(() -> calibrator.reference(ProbeRole.BATH, 20, 0.1));
    assertTrue(moved.reason().startsWith("the reading did not stand still"), moved.reason());
  }

  @Test
  void aProbeWithoutAValidReadingIsRefused() {
    ProbeCalibrator calibrator = calibrator();
    run(60);
    Answer none = ask(() -> calibrator.ice(ProbeRole.SECOND_BATH));
    assertEquals("the probe's reading is not valid: ABSENT", none.reason());
  }

  @Test
  void aReferenceOutsideOfItsRangesIsRefused() {
    ProbeCalibrator calibrator = calibrator();
    run(60);
    for (double celsius : new double[] {14.9, 70.1, Double.NaN}) {
      assertFalse(calibrator.reference(ProbeRole.BATH, celsius, 0.1).accepted());
    }
    for (double statedK : new double[] {0, 0.51, -0.1, Double.NaN}) {
      assertFalse(calibrator.reference(ProbeRole.BATH, 20, statedK).accepted());
    }
    assertFalse(Files.exists(file()));
  }

  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void inARunNothingIsTakenNorForgotten() {
    ProbeCalibrator calibrator = calibrator();
    run(60);
    var unused = mailbox.ask(Request.START, true);
    run(3);
    Answer taken = ask(() -> calibrator.reference(ProbeRole.BATH, 20, 0.1));
    assertTrue(taken.reason().endsWith("not in PROVING"), taken.reason());
    assertFalse(ask(() -> calibrator.forget(ProbeRole.BATH)).accepted());
    assertFalse(Files.exists(file()));
  }

  /** The start comes between the look at the state and the scan that would apply it. */
  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void whatTheScanRefusesDoesNotStayOnRecord() throws Exception {
    run(60);
    Snapshot atRest = last();
    ProbeCalibrator late = new ProbeCalibrator(desk(), mailbox, () -> atRest);
    var unused = mailbox.ask(Request.START, true);
    run(3);
    Answer answer = ask(() -> late.reference(ProbeRole.BATH, 20, 0.1));
    assertFalse(answer.accepted());
    assertEquals(Correction.NONE, desk().corrections().get(ProbeRole.BATH));
    assertFalse(Files.readString(file()).contains("reference"));
    assertEquals(Correction.NONE, run(1).probes().bath().correction());
  }

  /** A probe lent out comes back to its record where its stand-in was never taken. */
  @Test
  void whatTheScanRefusesLeavesTheRecordOfAnotherProbe() {
    run(60);
    CalibrationDesk lent =
        new CalibrationDesk(file(), Map.of(ProbeRole.BATH, "28-0000000000ab"), () -> 0);
    Stand ice = new Stand(30, 30, 0.5, 0.02);
    assertTrue(lent.save(ProbeRole.BATH, lent.withIce(ProbeRole.BATH, ice)));
    Snapshot atRest = last();
    ProbeCalibrator late = new ProbeCalibrator(desk(), mailbox, () -> atRest);
    var unused = mailbox.ask(Request.START, true);
    run(3);
    assertFalse(ask(() -> late.reference(ProbeRole.BATH, 20, 0.1)).accepted());
    assertTrue(
        new CalibrationDesk(file(), Map.of(ProbeRole.BATH, "28-0000000000ab"), () -> 0)
            .of(ProbeRole.BATH)
            .known());
  }

  @Test
  void aRecordThatCannotBeWrittenIsSaidAndNothingIsApplied() throws Exception {
    run(60);
    Files.createDirectories(file().resolve("in-the-way"));
    ProbeCalibrator calibrator = calibrator();
    Answer answer = ask(() -> calibrator.reference(ProbeRole.BATH, 20, 0.1));
    assertEquals("the record of calibrations cannot be written", answer.reason());
    assertEquals(Correction.NONE, run(1).probes().bath().correction());
  }
}
