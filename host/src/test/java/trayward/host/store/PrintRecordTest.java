package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.otherProgramDoes;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.session.Correction;
import trayward.host.session.Print;
import trayward.host.session.PrintEntries;
import trayward.host.session.PrintField;
import trayward.host.session.PrintStep;
import trayward.host.session.Session;
import trayward.host.session.StepKind;

class PrintRecordTest {

  private static final Instant NOW = EVENING.plusSeconds(3600);

  @TempDir Path folder;
  private TrayLog log;
  private Session session;

  @BeforeEach
  void open() throws LogRefused {
    log = LogFile.open(folder);
    session = log.startSession(EVENING, true);
    marked(log, IN, session, 10);
  }

  @AfterEach
  void close() {
    log.close();
  }

  private PrintUpdate change(long number, String... namesAndTexts) {
    Map<String, String> changes = new java.util.LinkedHashMap<>();
    for (int i = 0; i < namesAndTexts.length; i += 2) {
      changes.put(namesAndTexts[i], namesAndTexts[i + 1]);
    }
    return log.record().change(number, changes, NOW);
  }

  private static Problem problem(PrintUpdate update) {
    return assertInstanceOf(PrintUpdate.Refused.class, update).problem();
  }

  private List<Long> found(String words) {
    PrintQuery query = new PrintQuery(words, Map.of());
    return log.archive().find(query, 10, 0).stream().map(Print::number).toList();
  }

  @Test
  void whatIsSaidIsKeptInOneWayAndWhatStoodThereStaysInTheHistory() {
    change(1, "aperture", " 8.0 ", "paper", " warm matt ", "title", "Pier");
    change(1, "aperture", "11", "paper", "");
    PrintEntries entries = log.archive().entries(1);
    assertEquals(Map.of(PrintField.APERTURE, "11"), entries.fields());
    assertEquals("Pier", log.print(1).orElseThrow().title());
    assertEquals(
        List.of(
            correction("aperture", "", "8"),
            correction("paper", "", "warm matt"),
            correction("title", "", "Pier"),
            correction("aperture", "8", "11"),
            correction("paper", "warm matt", "")),
        entries.history());
    change(1, "aperture", "11.0");
    assertEquals(5, log.archive().entries(1).history().size(), "the same again is no change");
  }

  private static Correction correction(String field, String was, String became) {
    return new Correction(NOW, Correction.Thing.PRINT, 1, field, was, became);
  }

  @Test
  void oneWrongFieldAndNothingIsStored() {
    Problem problem = problem(change(1, "paper", "matt", "aperture", "129", "title", "x"));
    assertEquals(new Problem("aperture", "129", "1 to 128"), problem);
    assertEquals("colour", problem(change(1, "paper", "matt", "colour", "x")).field());
    assertEquals(PrintEntries.NONE, log.archive().entries(1));
    assertEquals("", log.print(1).orElseThrow().title());
    assertEquals(List.of(), found("matt"));
    assertEquals(new PrintUpdate.NoSuchPrint(), change(2, "paper", "matt"));
  }

  @Test
  void everyFieldHoldsAnyTextOrNumberThroughARestart() throws LogRefused {
    String nasty = "'; DROP TABLE prints; -- <script>alert(1)</script> \"x\" \u0000 % _ 夜";
    for (PrintField field : PrintField.values()) {
      String text = field.number() ? "1.5" : nasty;
      assertInstanceOf(PrintUpdate.Updated.class, change(1, field.word(), text), field.word());
    }
    log.record().addStep(1, "fix", "30.5", "1+4", nasty, NOW);
    log.record().setSymptoms(1, nasty, NOW);
    PrintEntries before = log.archive().entries(1);
    log.close();
    log = LogFile.open(folder);
    PrintEntries after = log.archive().entries(1);
    assertEquals(before, after);
    for (PrintField field : PrintField.values()) {
      assertEquals(field.number() ? "1.5" : nasty, after.of(field), field.word());
    }
    assertEquals(nasty, after.steps().get(0).what());
    assertEquals(Map.of(1L, nasty), log.archive().symptoms(List.of(1L)));
    assertEquals(1, log.prints(10, 0).size());
    assertEquals(List.of(1L), found("script"));
  }

  @Test
  void wordsAreFoundWhereverTheyStandAndNoLongerOnceTheyAreGone() {
    marked(log, IN, session, 100);
    marked(log, IN, session, 200);
    change(1, "title", "Südmole at dusk", "paper", "warm matt");
    change(2, "notes", "matt again; pepper fog", "faults", "pepper");
    log.record().addStep(3, "tone", "", "1+20", "selenium, old matt bottle", NOW);
    assertEquals(List.of(3L, 2L, 1L), found("matt"));
    assertEquals(List.of(1L), found("sudmole MATT"), "accents and case do not matter");
    assertEquals(List.of(2L), found("pep"), "the beginning of a word is enough");
    assertEquals(List.of(), found("dusk pepper"), "each word must be there");
    change(1, "paper", "");
    log.record().takeBackStep(3, 1, NOW);
    assertEquals(List.of(2L), found("matt"));
  }

  @Test
  void nothingInAPersonsWordsIsSyntaxOfTheSearch() {
    change(1, "title", "one OR two NEAR three");
    for (String words :
        List.of(
            "\"",
            "\"\"",
            "a\" OR \"",
            "one*",
            "-one",
            "NEAR(one two)",
            "words:one",
            "^one",
            "one AND",
            "(one",
            "{one}",
            "one\u0000two",
            "' OR 1=1",
            "* * *",
            "one + two")) {
      assertTrue(found(words).size() <= 1, words);
    }
    assertEquals(List.of(1L), found("OR"));
    assertEquals(List.of(1L), found("one NEAR"));
    assertEquals(List.of(), found("one NOT four"));
    assertEquals(List.of(1L), found("+++"), "no word at all asks for nothing");
  }

  @Test
  void fieldsAreFoundExactlyAndInPages() {
    for (int i = 2; i <= 5; i++) {
      marked(log, IN, session, 100 * i);
      change(i, "paper", i % 2 == 0 ? "matt" : "gloss", "aperture", "8");
    }
    PrintQuery matt = new PrintQuery("", Map.of(PrintField.PAPER, "matt"));
    assertEquals(List.of(4L, 2L), numbers(log.archive().find(matt, 10, 0)));
    assertEquals(List.of(2L), numbers(log.archive().find(matt, 10, 1)));
    PrintQuery both =
        new PrintQuery("gloss", Map.of(PrintField.PAPER, "gloss", PrintField.APERTURE, "8"));
    assertEquals(List.of(5L, 3L), numbers(log.archive().find(both, 10, 0)));
    assertEquals(log.prints(3, 1), log.archive().find(PrintQuery.ALL, 3, 1));
  }

  private static List<Long> numbers(List<Print> prints) {
    return prints.stream().map(Print::number).toList();
  }

  @Test
  void whatWasEnteredIsOfferedAgainNewestFirstAndOnce() {
    for (int i = 2; i <= 60; i++) {
      marked(log, IN, session, 100 * i);
      change(i, "paper_batch", "batch " + i % 55);
    }
    List<String> batches = log.archive().remembered(PrintField.PAPER_BATCH);
    assertEquals(PrintArchive.REMEMBERED_MAX, batches.size());
    assertEquals(List.of("batch 5", "batch 4"), batches.subList(0, 2));
    assertEquals(
        50,
        Map.copyOf(batches.stream().collect(java.util.stream.Collectors.toMap(b -> b, b -> 1)))
            .size());
  }

  @Test
  void stepsAreNumberedTakenBackAndKept() {
    PrintStep stop = step("stop", "30", "", "");
    PrintStep fix = step("fix", "90.5", "1+4", "rapid");
    assertEquals(1, stop.n());
    assertEquals("fix 90.5 s 1+4 rapid", fix.words());
    assertEquals(stop, log.record().takeBackStep(1, 1, NOW).orElseThrow());
    assertTrue(log.record().takeBackStep(1, 1, NOW).isEmpty());
    assertEquals(3, step("wash", "", "", "").n(), "a number is never given twice");
    PrintEntries entries = log.archive().entries(1);
    assertEquals(List.of(2, 3), entries.steps().stream().map(PrintStep::n).toList());
    assertEquals(OptionalDouble.empty(), entries.steps().get(1).seconds());
    assertEquals(List.of(correction("step 1", "stop 30 s", "")), entries.history());
  }

  private PrintStep step(String kind, String seconds, String dilution, String what) {
    Checked<PrintStep> checked = log.record().addStep(1, kind, seconds, dilution, what, NOW);
    return assertInstanceOf(Checked.Good.class, checked).value() instanceof PrintStep step
        ? step
        : new PrintStep(-1, StepKind.DRY, OptionalDouble.empty(), "", "", NOW);
  }

  @Test
  void aStepThatMakesNoSenseIsRefusedWithTheReason() {
    assertEquals("kind", stepProblem(1, "boil", "1", "", "").field());
    assertEquals("seconds", stepProblem(1, "fix", "-1", "", "").field());
    assertEquals("seconds", stepProblem(1, "fix", "172801", "", "").field());
    Problem colon = stepProblem(1, "fix", "", "1:7", "");
    assertTrue(colon.accepted().contains("1 in 7"), colon.accepted());
    assertEquals("dilution", stepProblem(1, "fix", "", "strong", "").field());
    assertEquals("what", stepProblem(1, "fix", "", "", "x".repeat(201)).field());
    assertEquals("print", stepProblem(9, "fix", "", "", "").field());
    for (int i = 0; i < PrintStep.STEPS_MAX; i++) {
      step("wash", "", "", "");
    }
    assertEquals("print", stepProblem(1, "wash", "", "", "").field());
  }

  private Problem stepProblem(long print, String kind, String s, String dilution, String what) {
    Checked<PrintStep> checked = log.record().addStep(print, kind, s, dilution, what, NOW);
    return assertInstanceOf(Checked.Bad.class, checked).problem();
  }

  @Test
  void symptomsAreThePersonsOwnWordsAndTheirHistoryIsKept() {
    log.record().setSymptoms(1, "sharp smell", NOW);
    log.record().setSymptoms(1, "sharp smell, headache", NOW);
    assertEquals(Map.of(1L, "sharp smell, headache"), log.archive().symptoms(List.of(1L, 7L)));
    assertEquals("sharp smell", log.archive().sessionHistory(1).get(1).was());
    assertInstanceOf(Checked.Bad.class, log.record().setSymptoms(1, "x".repeat(2001), NOW));
    assertInstanceOf(Checked.Good.class, log.record().setSymptoms(1, "x".repeat(2000), NOW));
  }

  @Test
  void theHistoryOfOneThingIsBounded() throws Exception {
    otherProgramDoes(
        log.file(),
        "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < "
            + (PrintRecord.HISTORY_MAX - 1)
            + ") INSERT INTO corrections (wall_ms, thing, thing_id, field, was, became)"
            + " SELECT i, 'print', 1, 'paper', 'p' || i, 'p' || (i + 1) FROM n");
    assertInstanceOf(PrintUpdate.Updated.class, change(1, "paper", "the last"));
    assertEquals("history", problem(change(1, "paper", "one more")).field());
    assertEquals(PrintArchive.HISTORY_SHOWN_MAX, log.archive().entries(1).history().size());
  }

  @Test
  void theVerdictIsAskedAgainTwelveHoursAfterThePull() {
    marked(log, PULL, session, 250);
    Print print = log.print(1).orElseThrow();
    Instant pulled = EVENING.plusSeconds(250);
    Map<PrintField, String> wet = Map.of(PrintField.VERDICT_WET, "blotchy");
    assertTrue(PrintEntries.askAgain(print, wet, pulled.plusSeconds(12 * 3600)));
    assertTrue(!PrintEntries.askAgain(print, wet, pulled.plusSeconds(12 * 3600 - 1)));
    Instant later = pulled.plusSeconds(100_000);
    assertTrue(!PrintEntries.askAgain(print, Map.of(), later));
    assertTrue(
        !PrintEntries.askAgain(
            print, Map.of(PrintField.VERDICT_WET, "a", PrintField.VERDICT_DRY, "b"), later));
    marked(log, IN, session, 300);
    assertTrue(!PrintEntries.askAgain(log.print(2).orElseThrow(), wet, later), "never pulled");
  }
}
