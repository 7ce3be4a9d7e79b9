package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.closedLog;
import static trayward.host.store.LogScenes.garble;
import static trayward.host.store.LogScenes.otherProgramDoes;
import static trayward.host.store.LogScenes.refusal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogDamageTest {

  /** SQLite's page size where nothing else is asked for. */
  private static final int PAGE = 4096;

  @TempDir Path folder;

  @Test
  void an_empty_file_is_damaged_and_not_taken_for_new() throws IOException {
    assertRefusedUnchanged(Files.createFile(folder.resolve(LogFile.NAME)));
  }

  @Test
  void a_file_of_zeros_is_damaged() throws IOException {
    Path file = folder.resolve(LogFile.NAME);
    for (int length : new int[] {1, 512, 10 * PAGE}) {
      Files.write(file, new byte[length]);
      assertRefusedUnchanged(file);
    }
  }

  @Test
  void a_text_file_is_damaged() throws IOException {
    Path file = folder.resolve(LogFile.NAME);
    Files.writeString(file, "a shopping list\n");
    assertRefusedUnchanged(file);
    Files.writeString(file, "bromide, sulfite, carbonate\n".repeat(5000));
    assertRefusedUnchanged(file);
  }

  @Test
  void a_garbled_header_is_damaged() throws IOException, LogRefused {
    Path file = closedLog(folder);
    garble(file, 0, 100);
    assertRefusedUnchanged(file);
  }

  @Test
  void a_garbled_first_page_behind_a_good_header_is_damaged() throws IOException, LogRefused {
    Path file = closedLog(folder);
    garble(file, 100, PAGE - 100);
    assertRefusedUnchanged(file);
  }

  @Test
  void any_garbled_page_but_an_unused_one_is_damaged() throws IOException, LogRefused {
    Path file = closedLog(folder);
    byte[] good = Files.readAllBytes(file);
    int pages = good.length / PAGE;
    assertTrue(pages > 20, "a log of many pages");
    for (int page = 0; page < pages; page++) {
      Files.write(file, good);
      garble(file, page * PAGE, PAGE);
      assertRefusedUnchanged(file);
    }
  }

  @Test
  void a_file_cut_short_is_damaged_wherever_it_is_cut() throws IOException, LogRefused {
    Path file = closedLog(folder);
    byte[] good = Files.readAllBytes(file);
    for (int length :
        new int[] {
          1, 99, 100, 512, PAGE - 1, PAGE, 3 * PAGE, good.length / 2, good.length - PAGE
        }) {
      Files.write(file, Arrays.copyOf(good, length));
      assertRefusedUnchanged(file);
    }
  }

  @Test
  void a_log_without_one_of_its_tables_is_damaged() throws Exception {
    Path file = closedLog(folder);
    otherProgramDoes(file, "DROP TABLE additions");
    assertRefusedUnchanged(file);
  }

  @Test
  void something_that_is_no_file_is_refused() throws IOException {
    Files.createDirectory(folder.resolve(LogFile.NAME));
    assertEquals(LogRefused.Reason.DAMAGED, refusal(folder).reason());
  }

  @Test
  void in_a_large_log_a_garbled_page_shows_when_it_is_read() throws Exception {
    Path file = closedLog(folder);
    garble(file, (int) Files.size(file) * 3 / 4 / PAGE * PAGE, PAGE);
    try (LogConnection log = new LogConnection(file, LogConnection.Use.READ)) {
      LogCheck.headerAndSchema(log);
      LogCheck.pages(log, Files.size(file) - 1);
      assertThrows(LogRefused.class, () -> LogCheck.pages(log, Files.size(file)));
      LogReader reader = new LogReader(log);
      LogFailed failed = assertThrows(LogFailed.class, () -> reader.trace(1, 0, 4000));
      assertEquals(file + " could not be read: it is damaged.", failed.getMessage());
    }
  }

  @Test
  void after_a_refusal_the_log_put_back_in_its_place_opens() throws IOException, LogRefused {
    Path file = closedLog(folder);
    byte[] good = Files.readAllBytes(file);
    garble(file, 0, 100);
    assertRefusedUnchanged(file);
    Files.write(file, good);
    try (TrayLog log = LogFile.open(folder)) {
      assertEquals(1, log.counts().prints());
    }
  }

  private void assertRefusedUnchanged(Path file) throws IOException {
    byte[] before = Files.readAllBytes(file);
    LogRefused refused = refusal(folder);
    assertEquals(LogRefused.Reason.DAMAGED, refused.reason());
    assertTrue(refused.getMessage().startsWith(file.toString()), refused.getMessage());
    assertArrayEquals(before, Files.readAllBytes(file));
  }
}
