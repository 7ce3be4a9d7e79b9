package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.keep.LearnedTray.Figure;

/** Learned trays over a real file. */
class LearnedFileTest {

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("controller-learned.txt");
  }

  private static LearnedTray tray(String name) {
    return new LearnedTray(
        name,
        LocalDate.parse("2026-11-27").toEpochDay(),
        250,
        true,
        new Figure(231.25, 0.02),
        new Figure(1100, 0.0625),
        new Figure(18, 0.0625),
        new Figure(2.5, 0.125),
        new Figure(1, 0.125),
        new Figure(5, 0.05),
        new Figure(3, 0.05),
        new Figure(100, 0.5),
        0.027);
  }

  @Test
  void withoutARecordNothingIsLearnedAndAllIsWell() {
    LearnedFile file = new LearnedFile(file(), () -> 0);
    assertTrue(file.readable());
    assertTrue(file.trays().isEmpty());
  }

  @Test
  void whatWasSavedIsThereAtTheNextStartEachTrayUnderItsName() {
    LearnedFile file = new LearnedFile(file(), () -> 0);
    assertEquals("", file.save(tray("small")));
    assertEquals("", file.save(tray("große Schale")));
    LearnedFile again = new LearnedFile(file(), () -> 0);
    assertTrue(again.readable());
    assertEquals(2, again.trays().size());
    assertEquals(tray("small"), again.trays().get("small"));
    assertEquals(tray("große Schale"), again.trays().get("große Schale"));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 5, 40, 80, 120, 170})
  void oneByteOtherThanWrittenAndNothingCountsAsLearned(int at) throws Exception {
    assertEquals("", new LearnedFile(file(), () -> 0).save(tray("small")));
    byte[] bytes = Files.readAllBytes(file());
    bytes[at] ^= 1;
    Files.write(file(), bytes);
    LearnedFile spoilt = new LearnedFile(file(), () -> 0);
    assertFalse(spoilt.readable());
    assertTrue(spoilt.trays().isEmpty());
    assertEquals("", spoilt.save(tray("small")));
    assertTrue(new LearnedFile(file(), () -> 0).readable());
  }

  @Test
  void aTornFileAndALargeOneAreUnreadable() throws Exception {
    assertEquals("", new LearnedFile(file(), () -> 0).save(tray("small")));
    String text = Files.readString(file());
    Files.writeString(file(), text.substring(0, text.length() / 2));
    assertFalse(new LearnedFile(file(), () -> 0).readable());
    Files.writeString(file(), "x".repeat(20_000));
    assertFalse(new LearnedFile(file(), () -> 0).readable());
  }

  @Test
  void aNumberThatIsNoneIsUnreadableThoughItsSumBeRight() {
    String body = "trayward-learned 1\nsmall\t2026-11-27\tNaN\tmeasured\n";
    assertTrue(LearnedText.read(body + "crc=" + CheckSum.of(body) + "\n").isEmpty());
    String head = "trayward-learned 2\n";
    assertTrue(LearnedText.read(head + "crc=" + CheckSum.of(head) + "\n").isEmpty());
  }

  @Test
  void theFileStaysSmall() {
    LearnedFile file = new LearnedFile(file(), () -> 0);
    for (int i = 0; i < LearnedFile.MAX_TRAYS; i++) {
      assertEquals("", file.save(tray("tray " + i)));
    }
    assertFalse(file.save(tray("one more")).isEmpty());
    assertEquals("", file.save(tray("tray 3")));
    assertEquals(LearnedFile.MAX_TRAYS, new LearnedFile(file(), () -> 0).trays().size());
  }

  @Test
  void aNameIsOneLineAPersonCanRead() {
    assertTrue(LearnedTray.named("tray 2.b"));
    for (String wrong : new String[] {"", " x", "a\tb", "a\nb", "a~\u0000", "x".repeat(41)}) {
      assertFalse(LearnedTray.named(wrong), wrong);
    }
  }
}
