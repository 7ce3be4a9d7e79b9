package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.calibrate.Calibration;
import trayward.controller.calibrate.Correction;
import trayward.controller.calibrate.Stand;
import trayward.controller.port.ProbeRole;

/** Calibrations over a real file. */
class CalibrationDeskTest {

  private static final String ROM = "28-0000000000ab";
  private static final Map<ProbeRole, String> FITTED =
      Map.of(ProbeRole.BATH, ROM, ProbeRole.PLATE, "28-0000000000cd");
  private static final long DAY = LocalDate.parse("2026-11-27").toEpochDay();
  private static final Stand ICE = new Stand(30, 30, 0.4375, 0.0301);
  private static final Stand WARM = new Stand(30, 30, 40.1, 0.0211);

  @TempDir private Path folder;
  private long epochSeconds = DAY * 24 * 3600 + 3600;

  private Path file() {
    return folder.resolve("controller-calibration.txt");
  }

  private CalibrationDesk desk() {
    return desk(FITTED);
  }

  private CalibrationDesk desk(Map<ProbeRole, String> fitted) {
    return new CalibrationDesk(file(), fitted, () -> epochSeconds);
  }

  private CalibrationDesk calibrated() {
    CalibrationDesk desk = desk();
    assertTrue(desk.save(ProbeRole.BATH, desk.withIce(ProbeRole.BATH, ICE)));
    assertTrue(desk.save(ProbeRole.BATH, desk.withReference(ProbeRole.BATH, 40, 0.1, WARM)));
    return desk;
  }

  @Test
  void withoutARecordNoProbeIsCorrectedAndAllIsWell() {
    CalibrationDesk desk = desk();
    assertTrue(desk.readable());
    for (ProbeRole role : ProbeRole.values()) {
      assertEquals(Correction.NONE, desk.corrections().get(role));
    }
  }

  @Test
  void bothPointsOutliveARestart() {
    Calibration before = calibrated().of(ProbeRole.BATH);
    CalibrationDesk after = desk();
    assertTrue(after.readable());
    assertEquals(before, after.of(ProbeRole.BATH));
    assertEquals(DAY, after.of(ProbeRole.BATH).ice().orElseThrow().epochDay());
    assertEquals(Correction.NONE, after.corrections().get(ProbeRole.PLATE));
  }

  @Test
  void theRecordIsTextThatAPersonCanRead() throws Exception {
    calibrated();
    String text = Files.readString(file());
    assertTrue(
        text.startsWith(
            """
            trayward-calibration 1
            bath\t28-0000000000ab\tice\t0.0000\t0.0500\t0.4375\t0.0301\t2026-11-27
            bath\t28-0000000000ab\treference\t40.0000\t0.1000\t40.1000\t0.0211\t2026-11-27
            crc="""),
        text);
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void anExchangedProbeInheritsNothing() {
    calibrated();
    CalibrationDesk other = desk(Map.of(ProbeRole.BATH, "28-0000000000ff"));
    assertTrue(other.ofAnother(ProbeRole.BATH));
    assertEquals(Correction.NONE, other.corrections().get(ProbeRole.BATH));
    assertEquals(0.5, other.of(ProbeRole.BATH).uncertaintyK(40));
    other.save(ProbeRole.BATH, other.withIce(ProbeRole.BATH, ICE));
    assertFalse(other.of(ProbeRole.BATH).reference().isPresent(), "nor half of it");
    assertFalse(other.ofAnother(ProbeRole.BATH));
  }

  @Test
  void aRomWrittenInOtherLettersIsTheSameProbe() {
    calibrated();
    CalibrationDesk upper = desk(Map.of(ProbeRole.BATH, "28-0000000000AB"));
    assertTrue(upper.of(ProbeRole.BATH).known());
  }

  @Test
  void whatIsForgottenIsGoneAfterARestartToo() {
    CalibrationDesk desk = calibrated();
    assertTrue(desk.save(ProbeRole.BATH, Calibration.none(ROM)));
    assertFalse(desk().of(ProbeRole.BATH).known());
    assertTrue(desk().readable());
  }

  /** A write that a power cut tore, at every length. */
  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aTornRecordAtAnyLengthCorrectsNothingAndSaysSo() throws Exception {
    calibrated();
    String whole = Files.readString(file());
    for (int length = 0; length < whole.length(); length++) {
      Files.writeString(file(), whole.substring(0, length));
      CalibrationDesk desk = desk();
      assertFalse(desk.readable(), "torn after " + length);
      assertEquals(Correction.NONE, desk.corrections().get(ProbeRole.BATH));
    }
  }

  @Test
  void aRecordThatWasAlteredCorrectsNothing() throws Exception {
    calibrated();
    Files.writeString(file(), Files.readString(file()).replace("0.4375", "0.4475"));
    assertFalse(desk().readable());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "x", "trayward-calibration 1", "trayward-upkeep 1\ncrc=0\n"})
  void whatIsNoRecordIsSaid(String text) throws Exception {
    Files.writeString(file(), text);
    assertFalse(desk().readable());
  }

  @Test
  void aFileTooLargeToBeOursAndAFolderInItsPlaceAreSaid() throws Exception {
    Files.writeString(file(), "x".repeat(5000));
    assertFalse(desk().readable());
    Files.delete(file());
    Files.createDirectory(file());
    CalibrationDesk desk = desk();
    assertFalse(desk.readable());
    Files.writeString(file().resolve("in-the-way"), "x");
    assertFalse(desk.save(ProbeRole.BATH, desk.withIce(ProbeRole.BATH, ICE)));
    assertFalse(desk.of(ProbeRole.BATH).known(), "what is not on the disk is not known");
  }

  /** The check sum is right and the numbers are not: somebody wrote it by hand. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bath 28-1 ice 0.0 0.05 3.0 0.01 2026-11-27 | off by 3 K",
        "bath 28-1 ice 1.0 0.05 1.0 0.01 2026-11-27 | ice of 1 °C",
        "bath 28-1 ice 0.0 0.01 0.1 0.01 2026-11-27 | better ice than there is",
        "bath 28-1 reference 90 0.1 90 0.01 2026-11-27 | hotter than a reference may be",
        "bath 28-1 reference 40 0.0 40 0.01 2026-11-27 | no uncertainty at all",
        "bath 28-1 reference 40 0.1 40 0.5 2026-11-27 | did not stand still",
        "bath 28-1 reference 40 0.1 NaN 0.01 2026-11-27 | no number",
        "bath 28-1 reference 40 0.1 40 0.01 2026-13-27 | no date",
        "sink 28-1 ice 0.0 0.05 0.1 0.01 2026-11-27 | no such place",
        "bath 28-1 steam 40 0.1 40 0.01 2026-11-27 | no such point",
        "bath 28-1 ice 0.0 0.05 0.1 0.01 | a field too few",
      })
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void aRecordThatNoSoundProbeCanHaveIsNotBelieved(String line, String why) throws Exception {
    write(line.replace(' ', '\t') + "\n");
    assertFalse(desk(Map.of(ProbeRole.BATH, "28-1")).readable(), why);
  }

  @Test
  void aPointTwiceOrOfTwoProbesIsNotBelieved() throws Exception {
    String ice = "bath\t28-1\tice\t0.0\t0.05\t0.1\t0.01\t2026-11-27\n";
    write(ice);
    assertTrue(desk(Map.of(ProbeRole.BATH, "28-1")).of(ProbeRole.BATH).known());
    write(ice + ice);
    assertFalse(desk().readable());
    write(ice + "bath\t28-2\treference\t40\t0.1\t40\t0.01\t2026-11-27\n");
    assertFalse(desk().readable());
  }

  private void write(String lines) throws Exception {
    String body = "trayward-calibration 1\n" + lines;
    Files.writeString(file(), body + "crc=" + CheckSum.of(body) + "\n");
  }

  @Test
  void aNewPointPutsAnUnreadableRecordRight() throws Exception {
    Files.writeString(file(), "torn");
    CalibrationDesk desk = desk();
    assertTrue(desk.save(ProbeRole.BATH, desk.withIce(ProbeRole.BATH, ICE)));
    assertTrue(desk.readable());
    assertTrue(desk().of(ProbeRole.BATH).known());
  }

  @Test
  @Verifies(value = "SR-22", side = Side.ALLOWS)
  void whateverTheClockShowsThePointIsTakenAndApplied() {
    epochSeconds = -5_000_000_000L;
    CalibrationDesk desk = calibrated();
    assertTrue(desk().of(ProbeRole.BATH).known());
    assertEquals(desk.of(ProbeRole.BATH).correction(), desk().of(ProbeRole.BATH).correction());
  }
}
