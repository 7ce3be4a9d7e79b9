package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.otherProgramDoes;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.host.WrittenFiles;
import trayward.host.report.LogExport;
import trayward.host.report.LogFolder;

/** What was exported comes back as it was, or not at all. */
class LogRoundTripTest {

  @TempDir Path folder;

  private Path export(Path log, String name) throws Exception {
    Path to = folder.resolve(name);
    try (LogReader reader = LogFile.openToRead(log)) {
      LogExport.write(to, reader.whole());
    }
    return to;
  }

  private static void takeIn(Path from, Path log) throws Exception {
    LogFile.takeIn(log, BookModel.STANDARD, new LogFolder(from));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 5})
  void aRandomLogComesBackByteForByteAndNothingIsWrongInEither(long seed) throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, seed, 12);
    assertEquals(List.of(), LogCopies.check(log, BookModel.STANDARD).findings());
    Path first = export(log, "first");
    Path again = folder.resolve("again");
    takeIn(first, again);
    assertEquals(List.of(), LogCopies.check(again, BookModel.STANDARD).findings());
    Path second = export(again, "second");
    Map<String, String> was = WrittenFiles.of(first);
    Map<String, String> is = WrittenFiles.of(second);
    assertEquals(was.keySet(), is.keySet());
    was.forEach((name, bytes) -> assertEquals(bytes, is.get(name), name));
    assertEquals(workedOut(log), workedOut(again), "what is worked out is made anew the same");
    try (TrayLog open = LogFile.open(again)) {
      assertTrue(open.counts().prints() > 0);
    }
  }

  private static List<String> workedOut(Path log) throws Exception {
    try (LogReader reader = LogFile.openToRead(log)) {
      return reader
          .connection()
          .read(
              handle ->
                  handle
                      .createQuery("SELECT * FROM print_baths ORDER BY print")
                      .map((row, c) -> PrintBathRows.bath(row, c).toString())
                      .list());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "log/marks.csv | \"in\" | \"out\" | log/marks.csv row 1: kind: found 'out', accepted is in, emergence, pull",
        "log/marks.csv | 1,1,\"in\" | 1,99999,\"in\" | log/marks.csv row 1: print: found '99999', accepted is an id of prints in this folder",
        "log/sessions.csv | \"off\" | \"\" | log/sessions.csv row 1: ending: found '', accepted is an end with a word for it, or neither",
        "manifest.json | trayward-log | other | manifest.json: found format 'other' version 1, accepted is trayward-log version 1",
        "traces/session-1.csv | 3,3 | x,3 | traces/session-1.csv row 1: t_ms: found 'x', accepted is a whole number, 0 to 2678400000"
      })
  void aWrongRowImportsNothingAndIsNamed(String file, String was, String is, String line)
      throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, 1, 3);
    Path first = export(log, "first");
    Path wrong = first.resolve(file);
    String text = Files.readString(wrong);
    String changed =
        text.replaceFirst(java.util.regex.Pattern.quote(was), is.replace("\\", "\\\\"));
    assertFalse(text.equals(changed), "something was planted");
    Files.writeString(wrong, changed);
    Path again = folder.resolve("again");
    RowRefused refused = assertThrows(RowRefused.class, () -> takeIn(first, again));
    assertEquals(line, refused.getMessage());
    assertFalse(Files.exists(again.resolve(LogFile.NAME)));
    if (Files.exists(again.resolve("pictures"))) {
      assertEquals(Map.of(), WrittenFiles.of(again.resolve("pictures")));
    }
  }

  @Test
  void marksOutOfOrderAndPicturesOfAnotherSizeAreRefused() throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, 1, 3);
    otherProgramDoes(
        log.resolve(LogFile.NAME),
        "UPDATE marks SET session_ms = 1 WHERE id = (SELECT max(id) FROM marks WHERE undone = 0)");
    Path first = export(log, "first");
    RowRefused refused =
        assertThrows(RowRefused.class, () -> takeIn(first, folder.resolve("again")));
    assertTrue(refused.getMessage().contains("session_ms"), refused.getMessage());
    try (Stream<Path> pictures = Files.list(first.resolve("pictures"))) {
      Path picture = pictures.findFirst().orElseThrow();
      Files.write(picture, new byte[] {1});
    }
    refused = assertThrows(RowRefused.class, () -> takeIn(first, folder.resolve("again")));
    assertTrue(refused.getMessage().contains("bytes: found '1'"), refused.getMessage());
  }

  @Test
  void onlyAnEmptyLogTakesAnythingIn() throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, 1, 2);
    Path first = export(log, "first");
    byte[] before = Files.readAllBytes(log.resolve(LogFile.NAME));
    RowRefused refused = assertThrows(RowRefused.class, () -> takeIn(first, log));
    assertTrue(refused.getMessage().endsWith("accepted is none or an empty one"));
    assertArrayEquals(before, Files.readAllBytes(log.resolve(LogFile.NAME)));
    Path empty = folder.resolve("empty");
    LogFile.open(empty).close();
    takeIn(first, empty);
    assertEquals(List.of(), LogCopies.check(empty, BookModel.STANDARD).findings());
  }
}
