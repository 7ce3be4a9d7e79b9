package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.event.AlarmState;

/** The alarm record over real files. */
class AlarmRecordTest {

  /** 2026-11-25T00:00:00Z. */
  private static final long DAY_S = 20_782L * 24 * 3600;

  @TempDir private Path folder;

  private Path current() {
    return folder.resolve("controller-alarms.txt");
  }

  private Path old() {
    return folder.resolve("controller-alarms.old.txt");
  }

  private AlarmRecord record() {
    return new AlarmRecord(current(), old());
  }

  private static AlarmEntry step(int i) {
    AlarmState state = i % 2 == 0 ? AlarmState.UNACKNOWLEDGED : AlarmState.NORMAL;
    return new AlarmEntry(DAY_S + i, i + 0.5, "AIR_LOST", state, "step " + i);
  }

  private static List<AlarmEntry> steps(int from, int to) {
    return IntStream.range(from, to).mapToObj(AlarmRecordTest::step).toList();
  }

  private static List<AlarmEntry> newestFirst(int from, int to) {
    List<AlarmEntry> list = new ArrayList<>(steps(from, to));
    Collections.reverse(list);
    return list;
  }

  private static int lines(Path file) throws Exception {
    return Files.readAllLines(file).size();
  }

  @Test
  void aStepIsOneLineThatAPersonCanReadClosedByItsCheckSum() throws Exception {
    record().add(List.of(new AlarmEntry(DAY_S, 12.25, "TRAY_DRY", AlarmState.UNACKNOWLEDGED, "a")));
    String line = Files.readString(current());
    assertTrue(
        line.matches("2026-11-25T00:00:00Z\t12.3\tTRAY_DRY\tUNACKNOWLEDGED\ta\tcrc=[0-9a-f]{8}\n"),
        line);
  }

  /** CRC-32C of "123456789" is e3069283: the check value of RFC 3720 and the CRC catalogues. */
  @Test
  void theCheckSumIsTheOneOfTheStandard() {
    String line = AlarmText.write(step(1));
    java.util.zip.CRC32C crc = new java.util.zip.CRC32C();
    crc.update("123456789".getBytes(StandardCharsets.UTF_8));
    assertEquals(0xe3069283L, crc.getValue());
    crc.reset();
    int at = line.indexOf("\tcrc=");
    crc.update(line.substring(0, at).getBytes(StandardCharsets.UTF_8));
    assertEquals("\tcrc=" + String.format("%08x", crc.getValue()) + "\n", line.substring(at));
  }

  @Test
  void whatWasWrittenIsThereAfterARestartNewestFirst() {
    record().add(steps(0, 7));
    AlarmRecord again = record();
    assertEquals(newestFirst(0, 7), again.newest(100));
    assertEquals(newestFirst(4, 7), again.newest(3));
    assertTrue(again.ok());
    assertEquals(0, again.skipped());
  }

  @Test
  void afterFiveThousandStepsTheNewestThousandOrMoreAreKeptAndNoMoreThanTwoThousand()
      throws Exception {
    AlarmRecord record = record();
    for (int i = 0; i < 5000; i += 10) {
      record.add(steps(i, i + 10));
    }
    assertEquals(newestFirst(3000, 5000), record.newest(9999));
    assertEquals(1000, lines(current()));
    assertEquals(1000, lines(old()));
    assertEquals(newestFirst(3000, 5000), record().newest(AlarmRecord.MOST));
    assertTrue(Files.size(current()) < 1_000_000);
    assertEquals(2, folder.toFile().list().length);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 7, 999, 1000, 1001, 2500})
  void nothingIsLostOrRepeatedWhereTheFileIsRotated(int batch) {
    AlarmRecord record = record();
    int told = 0;
    while (told < 1500) {
      record.add(steps(told, told + batch));
      told += batch;
    }
    List<AlarmEntry> kept = record().newest(AlarmRecord.MOST);
    int least = Math.min(told, 1000);
    assertTrue(kept.size() >= least && kept.size() <= 2000, kept.size() + " of " + told);
    assertEquals(newestFirst(told - kept.size(), told), kept);
    assertEquals(told <= 2000 ? told : 1000 + (told - 1) % 1000 + 1, kept.size());
  }

  @Test
  void aFullFileLeftByARestartIsRotatedByTheNextStepAndNotBefore() throws Exception {
    record().add(steps(0, 1000));
    AlarmRecord again = record();
    assertFalse(Files.exists(old()));
    again.add(steps(1000, 1001));
    assertEquals(1, lines(current()));
    assertEquals(1000, lines(old()));
  }

  @Test
  void aTornLastLineIsSkippedAndCountedAndSpoilsNoLineAfterIt() throws Exception {
    record().add(steps(0, 5));
    byte[] whole = Files.readAllBytes(current());
    int last = AlarmText.write(step(4)).length();
    for (int cut = 1; cut < last; cut++) {
      Files.write(current(), java.util.Arrays.copyOf(whole, whole.length - cut));
      boolean onlyItsEnd = cut == 1; // the line itself is whole then
      AlarmRecord again = record();
      assertEquals(onlyItsEnd ? 0 : 1, again.skipped(), "cut " + cut);
      assertEquals(newestFirst(0, onlyItsEnd ? 5 : 4), again.newest(9));
      again.add(steps(5, 6));
      AlarmRecord third = record();
      assertEquals(step(5), third.newest(1).get(0));
      assertEquals(onlyItsEnd ? 6 : 5, third.newest(9).size());
    }
  }

  @Test
  void anAlteredLineIsSkippedAloneAndBytesThatAreNoTextAreToo() throws Exception {
    record().add(steps(0, 3));
    String altered = Files.readString(current()).replace("step 1", "step 8");
    Files.writeString(current(), altered);
    Files.write(current(), new byte[] {(byte) 0xff, 0, (byte) 0xc3, 10}, StandardOpenOption.APPEND);
    AlarmRecord again = record();
    assertEquals(List.of(step(2), step(0)), again.newest(9));
    assertEquals(2, again.skipped());
    assertTrue(again.ok());
  }

  @Test
  void aFileTooLargeToBeOursIsNotReadAndMakesWay() throws Exception {
    Files.writeString(current(), "x".repeat(2_000_000));
    AlarmRecord record = record();
    assertEquals(1, record.skipped());
    record.add(steps(0, 2));
    assertEquals(newestFirst(0, 2), record().newest(9));
    assertEquals(2, lines(current()));
  }

  /** A folder in the way stops even a superuser, unlike permissions. */
  @Test
  void aRecordThatCannotBeWrittenSaysSoAndWritesWhatWaitedOnceItCan() throws Exception {
    Files.createDirectory(current());
    AlarmRecord record = record();
    assertFalse(record.ok(), "known before the first alarm");
    record.add(steps(0, 3));
    assertFalse(record.ok());
    assertEquals(newestFirst(0, 3), record.newest(9), "shown all the same");
    Files.delete(current());
    record.add(List.of());
    assertTrue(record.ok());
    assertEquals(0, record.lost());
    assertEquals(newestFirst(0, 3), record().newest(9));
  }

  @Test
  void aFileThatCannotBeRotatedLosesNothingMeanwhile() throws Exception {
    AlarmRecord record = record();
    record.add(steps(0, 1000));
    Files.createDirectories(old().resolve("inside"));
    record.add(steps(1000, 1500));
    assertFalse(record.ok());
    Files.delete(old().resolve("inside"));
    Files.delete(old());
    record.add(steps(1500, 1501));
    assertTrue(record.ok());
    assertEquals(newestFirst(0, 1501), record().newest(AlarmRecord.MOST));
  }

  @Test
  void whatWaitsForADiskThatFailsIsBoundedAndWhatIsLostIsCounted() throws Exception {
    Files.createDirectory(current());
    AlarmRecord record = record();
    for (int i = 0; i < 1700; i++) {
      record.add(steps(i, i + 1));
    }
    record.missed(5);
    assertEquals(705, record.lost());
    Files.delete(current());
    record.add(List.of());
    assertEquals(newestFirst(700, 1700), record().newest(AlarmRecord.MOST));
  }

  /** The device that is always full: what it takes in part must not be there twice later. */
  @Test
  void aFullDiskIsNoExceptionAndIsTold() throws Exception {
    Path full = Path.of("/dev/full");
    assertTrue(Files.exists(full), "Linux has it");
    Files.createSymbolicLink(current(), full);
    AlarmRecord record = record();
    record.add(steps(0, 3));
    assertFalse(record.ok());
    Files.delete(current());
    record.add(steps(3, 4));
    assertTrue(record.ok());
    assertEquals(newestFirst(0, 4), record().newest(9));
  }

  @Test
  void aFileSomebodyDeletedOrShortenedBeginsAnew() throws Exception {
    AlarmRecord record = record();
    record.add(steps(0, 4));
    Files.delete(current());
    record.add(steps(4, 6));
    assertEquals(2, lines(current()));
    Files.write(current(), new byte[0]);
    record.add(steps(6, 7));
    assertEquals(newestFirst(6, 7), record().newest(9));
  }

  @Test
  void aDetailStaysOnItsLineAndAnyClockCanBeWritten() {
    String nasty = "a\nb\tc\u0000" + "é".repeat(300);
    AlarmRecord record = record();
    record.add(
        List.of(
            new AlarmEntry(Long.MAX_VALUE, 1, "X", AlarmState.NORMAL, nasty),
            new AlarmEntry(Long.MIN_VALUE, 1, "X", AlarmState.NORMAL, "")));
    AlarmRecord again = record();
    assertEquals(record.newest(9), again.newest(9));
    assertEquals(0, again.skipped());
    assertEquals(AlarmEntry.DETAIL_MAX, again.newest(9).get(1).detail().length());
    assertTrue(again.newest(9).get(1).detail().startsWith("a b c "));
  }
}
