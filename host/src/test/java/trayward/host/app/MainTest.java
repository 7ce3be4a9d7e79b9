package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.WrittenFiles;
import trayward.host.bath.BookEntry;
import trayward.host.report.TraceCsv;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.TraceSample;
import trayward.host.store.BathBook;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;

/** Words in, exit code and one line out. */
@Timeout(60)
class MainTest {

  @TempDir private Path folder;

  /** What a command said and how it ended. */
  private record Said(int code, String out, String err) {
    /** The last line on standard error; the progress bar draws on the lines before. */
    String lastError() {
      List<String> lines = err.lines().toList();
      return lines.isEmpty() ? "" : lines.get(lines.size() - 1);
    }
  }

  private static Said say(String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Main.run(
            words,
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8));
    return new Said(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private Path file(String name, String text) throws Exception {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void wrongWordsAreOneLineAndExitTwo() {
    for (String[] words :
        new String[][] {
          {"runn"}, {"rehearse"}, {"rehearse", "a.toml"}, {"print"}, {"print", "x"}, {"run", "-x"}
        }) {
      Said said = say(words);
      assertEquals(2, said.code(), Arrays.toString(words));
      assertEquals(1, said.err().lines().count(), said.err());
    }
  }

  @Test
  void helpIsEverywhere() {
    for (String command :
        List.of(
            "run",
            "rehearse",
            "identify",
            "wiring-check",
            "prints",
            "print",
            "export",
            "import",
            "check-log",
            "backup",
            "card",
            "sheet")) {
      Said said = say(command, "--help");
      assertEquals(0, said.code(), command);
      assertTrue(said.out().contains("Usage: trayward " + command), said.out());
    }
  }

  @Test
  void aWrongSettingNamesFileKeyFoundAndAccepted() throws Exception {
    Path config = file("bad.toml", "[control]\nset_c = 70\n");
    Said said = say("run", "--config", config.toString());
    assertEquals(2, said.code());
    assertEquals(config + ": control.set_c: found 70, accepted is 15 to 50 °C", said.lastError());
  }

  @Test
  void aRehearsalWritesItsThreeFilesAndTheSameScenarioTheSameTrace() throws Exception {
    Path scenario =
        file(
            "s.toml",
            """
            name = "short"
            duration_s = 1200
            [[at]]
            t_s = 0
            do = "start"
            [[at]]
            t_s = 900
            do = "mark"
            kind = "in"
            """);
    Path one = folder.resolve("one");
    Path two = folder.resolve("two");
    assertEquals(0, say("rehearse", scenario.toString(), "--out", one.toString()).code());
    assertEquals(0, say("rehearse", scenario.toString(), "--out", two.toString()).code());
    List<String> trace = Files.readAllLines(one.resolve("trace.csv"));
    assertEquals(TraceCsv.HEADER, trace.get(0));
    assertEquals(1 + 12_001, trace.size());
    assertEquals(-1, Files.mismatch(one.resolve("trace.csv"), two.resolve("trace.csv")));
    JsonNode result = new ObjectMapper().readTree(one.resolve("result.json").toFile());
    assertTrue(result.path("heat_up_s").asDouble() > 600, result.toString());
    // Time-optimal bound of the reference tray: 612.2 s by integration of its equations.
    assertEquals(612.2, result.path("time_optimal_s").asDouble(), 6.0);
    assertEquals(0, result.path("trips").size());
    assertTrue(Files.readString(one.resolve("events.jsonl")).contains("\"kind\":\"MARK\""));
  }

  @Test
  void aWrongScenarioWritesNothing() throws Exception {
    Path scenario = file("s.toml", "[[fault]]\nt_s = 1\nkind = \"gremlins\"\n");
    Path out = folder.resolve("out");
    Said said = say("rehearse", scenario.toString(), "--out", out.toString());
    assertEquals(2, said.code());
    assertTrue(said.lastError().contains("fault number 1.kind: found 'gremlins'"), said.err());
    assertFalse(Files.exists(out));
  }

  @Test
  void aTakenPortIsNamedWithTheWayToChangeIt() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Path config =
          file(
              "port.toml",
              "[server]\nport = "
                  + taken.getLocalPort()
                  + "\n[log]\nfolder = \""
                  + folder
                  + "/data\"\n");
      Said said = say("run", "--config", config.toString());
      assertEquals(1, said.code());
      assertTrue(said.lastError().contains("port " + taken.getLocalPort()), said.err());
      assertTrue(said.lastError().contains("[server] port"), said.err());
    }
  }

  @Test
  void aLogInUseAndADamagedLogAreRefusedAndNoNewOneIsMade() throws Exception {
    Path config = file("log.toml", "[server]\nport = 0\n[log]\nfolder = \"" + folder + "/d\"\n");
    Path data = Files.createDirectories(folder.resolve("d"));
    try (TrayLog log = LogFile.open(data)) {
      Said said = say("run", "--config", config.toString());
      assertEquals(1, said.code());
      assertTrue(said.lastError().contains(log.file().toString()), said.err());
    }
    Files.writeString(data.resolve(LogFile.NAME), "not a log");
    Said said = say("run", "--config", config.toString());
    assertEquals(2, said.code());
    assertTrue(said.lastError().contains(LogFile.NAME), said.err());
    assertEquals("not a log", Files.readString(data.resolve(LogFile.NAME)));
  }

  @Test
  void printsAreListedShownAndExported() throws Exception {
    Path data = folder.resolve("data");
    Instant wall = Instant.parse("2031-05-06T07:08:09Z");
    try (TrayLog log = LogFile.open(data)) {
      long session = log.startSession(wall, true).id();
      log.baths()
          .make(
              new BathBook.Now(wall, 0),
              "evening",
              0,
              "",
              List.of(BookEntry.poured(0, 0, wall, 0, "water", 800)));
      log.mark(MarkKind.IN, session, new Moment(5, wall), "page", OptionalDouble.of(40));
      for (int t = 5; t <= 65; t++) {
        log.addTrace(session, new TraceSample(t, 40, 45, 40, 0.4, "HOLDING", true));
      }
      log.mark(MarkKind.PULL, session, new Moment(65, wall), "pedal", OptionalDouble.of(40));
      log.updatePrint(1, java.util.Optional.of("pier, \"low\" tide"), java.util.Optional.empty());
      log.record().change(1, Map.of("paper", "matt, \"old\"", "aperture", "5.6"), wall);
      log.record().change(1, Map.of("aperture", "8"), wall);
      log.record().addStep(1, "fix", "60", "1+4", "\u001b[31mred", wall);
    }
    Said list = say("prints", "--log", data.toString());
    assertEquals(0, list.code());
    assertTrue(list.out().contains("1:00") && list.out().contains("pier"), list.out());
    Said one = say("print", "1", "--log", data.toString());
    assertTrue(one.out().contains("by pedal") && one.out().contains("40.00"), one.out());
    assertTrue(
        one.out().contains("fix 60 s 1+4") && one.out().contains("was \"5.6\", became \"8\""),
        one.out());
    assertTrue(one.out().contains("in bath 1     0.80 L, strength 0.000"), one.out());
    assertFalse(one.out().contains("paper: was"), "said for the first time: " + one.out());
    assertFalse(one.out().contains("\u001b"), "a terminal gets no control characters");
    assertTrue(list.out().contains("matt"), list.out());
    assertEquals(2, say("print", "9", "--log", data.toString()).code());
    Path out = folder.resolve("export");
    String to = out.toString();
    assertEquals(0, say("export", "--out", to, "--log", data.toString()).code());
    assertTrue(Files.readString(out.resolve("prints.csv")).contains("\"pier, \"\"low\"\" tide\""));
    List<String> csv = Files.readAllLines(out.resolve("prints.csv"));
    assertTrue(csv.get(0).endsWith(",verdict_wet,verdict_dry,faults"), csv.get(0));
    assertTrue(csv.get(1).contains(",\"matt, \"\"old\"\"\",,,,,,8,,"), csv.get(1));
    assertEquals(62, Files.readAllLines(out.resolve("print-1-trace.csv")).size());
    assertEquals(
        0, say("export", "--format", "json", "--out", to, "--log", data.toString()).code());
    JsonNode json = new ObjectMapper().readTree(out.resolve("prints.json").toFile());
    assertEquals(60, json.path(0).path("pull_s").asDouble());
    assertEquals(8, json.path(0).path("record").path("aperture").asDouble());
    assertEquals(0.8, json.path(0).path("bath").path("litres").asDouble(), 1e-9);
    JsonNode baths = new ObjectMapper().readTree(out.resolve("baths.json").toFile());
    assertEquals("water", baths.path(0).path("book").path(0).path("what").asText());
    assertEquals(1, baths.path(0).path("book").path(1).path("print").asInt());
    assertEquals("fix", json.path(0).path("steps").path(0).path("kind").asText());
    assertEquals("title", json.path(0).path("history").path(0).path("field").asText());
    assertEquals(2, say("export", "--format", "xml", "--out", to).code());
    assertEquals(2, say("prints", "--log", folder.resolve("nowhere").toString()).code());
  }

  @Test
  void aLogGoesOutComesInAndIsCheckedAndCopied() throws Exception {
    String log = folder.resolve("data").toString();
    Instant wall = Instant.parse("2031-05-06T07:08:09Z");
    try (TrayLog open = LogFile.open(Path.of(log))) {
      long session = open.startSession(wall, true).id();
      open.mark(MarkKind.IN, session, new Moment(5, wall), "page", OptionalDouble.of(40));
      open.addTrace(session, new TraceSample(6, Double.NaN, 45, 40, 0.4, "HOLDING", true));
      open.mark(MarkKind.PULL, session, new Moment(65, wall), "pedal", OptionalDouble.empty());
    }
    String first = folder.resolve("first").toString();
    String again = folder.resolve("again").toString();
    String second = folder.resolve("second").toString();
    assertEquals(0, say("export", "--out", first, "--log", log).code());
    Said in = say("import", first, "--log", again);
    assertEquals(0, in.code(), in.err());
    assertTrue(in.out().contains("1 sessions, 1 prints, 2 marks"), in.out());
    assertEquals(0, say("export", "--out", second, "--log", again).code());
    assertEquals(WrittenFiles.of(Path.of(first)), WrittenFiles.of(Path.of(second)));
    Said twice = say("import", first, "--log", again);
    assertEquals(2, twice.code());
    assertEquals(1, twice.err().lines().count(), twice.err());
    String copy = folder.resolve("copy").toString();
    assertEquals(0, say("backup", "--out", copy, "--log", again).code());
    assertEquals(2, say("backup", "--out", copy, "--log", again).code());
    Said check = say("check-log", "--log", copy);
    assertEquals(0, check.code(), check.out());
    assertTrue(check.out().endsWith("nothing is wrong\n"), check.out());
    String card = folder.resolve("card.pdf").toString();
    assertEquals(0, say("card", "1", "--out", card, "--log", copy).code());
    assertTrue(Files.readString(Path.of(card), StandardCharsets.ISO_8859_1).startsWith("%PDF-"));
    String sheet = folder.resolve("sheet.html").toString();
    assertEquals(0, say("sheet", "1", "--out", sheet, "--log", copy).code());
    assertTrue(Files.readString(Path.of(sheet)).startsWith("<!DOCTYPE html>"));
    assertEquals(2, say("card", "999", "--out", card, "--log", copy).code());
    assertEquals(2, say("sheet", "999", "--out", sheet, "--log", copy).code());
    assertEquals(2, say("check-log", "--log", folder.resolve("nowhere").toString()).code());
    assertEquals(2, say("backup", "--out", card, "--log", copy).code());
  }

  @Test
  void aWrongRowImportsNothingAndADamagedLogFailsItsCheck() throws Exception {
    String log = folder.resolve("data").toString();
    Instant wall = Instant.parse("2031-05-06T07:08:09Z");
    try (TrayLog open = LogFile.open(Path.of(log))) {
      long session = open.startSession(wall, true).id();
      open.mark(MarkKind.IN, session, new Moment(5, wall), "page", OptionalDouble.of(40));
    }
    String out = folder.resolve("out").toString();
    assertEquals(0, say("export", "--out", out, "--log", log).code());
    Path marks = Path.of(out, "log", "marks.csv");
    Files.writeString(marks, Files.readString(marks).replaceFirst("4000", "4000.5"));
    Said wrong = say("import", out, "--log", folder.resolve("none").toString());
    assertEquals(2, wrong.code());
    String named = "log/marks.csv row 1: bath_centi_c: found '4000.5', accepted is a whole number";
    assertTrue(wrong.lastError().startsWith(named), wrong.lastError());
    assertFalse(Files.exists(folder.resolve("none").resolve(LogFile.NAME)));
    Path file = Path.of(log, LogFile.NAME);
    byte[] bytes = Files.readAllBytes(file);
    Arrays.fill(bytes, 5000, bytes.length, (byte) 7);
    Files.write(file, bytes);
    assertEquals(1, say("check-log", "--log", log).code());
  }
}
