package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.Print;
import trayward.host.session.PrintSummary;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;

class TrayLogTraceTest {

  @TempDir Path folder;
  private TrayLog log;
  private Session session;

  @BeforeEach
  void open() throws LogRefused {
    log = LogFile.open(folder);
    session = log.startSession(EVENING, true);
  }

  @AfterEach
  void close() {
    log.close();
  }

  @Test
  void a_sample_comes_back_to_the_hundredth_of_a_degree() {
    assertTrue(
        log.addTrace(1, new TraceSample(1.0004, 40.0625, 46.128, 40, 0.3334, "HOLDING", true)));
    assertEquals(
        List.of(new TraceSample(1.0, 40.06, 46.13, 40, 0.333, "HOLDING", true)),
        log.trace(1, 0, 10));
  }

  @Test
  void what_was_not_valid_comes_back_as_not_valid() {
    TraceSample blind = new TraceSample(1, Double.NaN, Double.NaN, Double.NaN, 0, "LOCKOUT", false);
    log.addTrace(1, blind);
    assertEquals(List.of(blind), log.trace(1, 0, 10));
  }

  @Test
  void samplesWithAndWithoutAReadingStandInOneBatchInAnyOrder() {
    assertEquals(3, log.addTrace(1, List.of(blind(2), sample(3), blind(4))));
    assertEquals(2, log.addTrace(1, List.of(sample(5), blind(6))));
    assertEquals(
        List.of(false, true, false, true, false),
        log.trace(1, 0, 10).stream().map(s -> Double.isFinite(s.bathC())).toList());
  }

  private static TraceSample blind(double s) {
    return new TraceSample(s, Double.NaN, 46, 40, 0, "LOCKOUT", false);
  }

  @Test
  void temperatures_below_zero_and_beyond_any_probe_are_kept_in_bounds() {
    log.addTrace(1, new TraceSample(1, -10.31, 1e9, -1e9, 0, "OFF", false));
    TraceSample back = log.trace(1, 0, 10).get(0);
    assertEquals(-10.31, back.bathC());
    assertEquals(327.67, back.plateC());
    assertEquals(-327.67, back.setC());
  }

  @Test
  void the_span_asked_for_includes_both_ends_in_time_order() {
    log.addTrace(1, List.of(sample(3), sample(1), sample(2), sample(4)));
    assertEquals(List.of(sample(2), sample(3)), log.trace(1, 2, 3));
    assertEquals(4, log.trace(1, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY).size());
    assertEquals(List.of(), log.trace(2, 0, 10));
  }

  @Test
  void a_sample_at_the_same_millisecond_replaces_the_first() {
    log.addTrace(1, sample(1));
    log.addTrace(1, new TraceSample(1.0001, 41, 47, 40, 0.5, "HEATING", true));
    assertEquals(1, log.trace(1, 0, 10).size());
    assertEquals("HEATING", log.trace(1, 0, 10).get(0).state());
  }

  @Test
  void samples_of_a_session_that_is_not_open_are_not_kept() {
    assertFalse(log.addTrace(99, sample(1)));
    log.endSession(1, EVENING, "stopped");
    assertFalse(log.addTrace(1, sample(1)));
    assertEquals(0, log.counts().traceSamples());
  }

  @Test
  void samples_after_the_longest_session_are_not_kept() {
    assertEquals(1, log.addTrace(1, List.of(sample(31 * 86_400), sample(31 * 86_400 + 1))));
  }

  @Test
  void more_names_of_states_than_there_is_room_for_become_a_question_mark() {
    for (int i = 0; i <= TraceRows.STATES_MAX; i++) {
      log.addTrace(1, new TraceSample(i, 40, 46, 40, 0, "S" + i, true));
    }
    List<TraceSample> back = log.trace(1, 0, 100);
    assertEquals("S63", back.get(63).state());
    assertEquals("?", back.get(64).state());
  }

  @Test
  void the_trace_of_a_print_goes_exactly_from_in_to_pull() {
    log.addTrace(1, List.of(sample(9), sample(10), sample(11), sample(12), sample(13)));
    marked(log, IN, session, 10);
    assertEquals(4, log.traceOf(log.print(1).orElseThrow()).size());
    Print pulled = marked(log, PULL, session, 12);
    assertEquals(List.of(sample(10), sample(11), sample(12)), log.traceOf(pulled));
  }

  @Test
  void the_trace_of_a_print_left_without_a_pull_ends_where_it_was_left() {
    marked(log, IN, session, 10);
    marked(log, IN, session, 12);
    log.addTrace(1, List.of(sample(11), sample(12), sample(13), sample(14)));
    assertEquals(List.of(sample(11), sample(12)), log.traceOf(log.print(1).orElseThrow()));
  }

  @Test
  void the_trace_of_a_print_is_bounded_to_six_hours() {
    Print print = marked(log, IN, session, 0);
    log.addTrace(1, List.of(sample(0), sample(21_600), sample(21_601)));
    assertEquals(List.of(sample(0), sample(21_600)), log.traceOf(print));
  }

  @Test
  void the_summary_uses_the_samples_around_in_and_pull() {
    // By hand: in at 10.5 s half way from 40 to 42; pull at 12.25 s a quarter of 44 to 46.
    log.addTrace(1, List.of(bath(10, 40), bath(11, 42), bath(12, 44), bath(13, 46)));
    marked(log, IN, session, 10.5);
    PrintSummary sums = log.summaryOf(marked(log, PULL, session, 12.25));
    assertEquals(41, sums.atInC().orElseThrow(), 1e-9);
    assertEquals(44.5, sums.atPullC().orElseThrow(), 1e-9);
    assertEquals(2, sums.samples());
    assertEquals(43, sums.meanC().orElseThrow(), 1e-9);
  }

  @Test
  void a_sample_takes_under_forty_bytes_of_the_file() throws IOException, LogRefused {
    long before = closedSize();
    int count = 20_000;
    try (TrayLog again = LogFile.open(folder)) {
      long id = again.startSession(EVENING, true).id();
      for (int from = 0; from < count; from += 1000) {
        again.addTrace(id, samples(from, 1000));
      }
    }
    double bytes = (Files.size(folder.resolve(LogFile.NAME)) - before) / (double) count;
    assertTrue(bytes < 40, "bytes per sample: " + bytes);
  }

  private long closedSize() throws IOException {
    log.close();
    return Files.size(folder.resolve(LogFile.NAME));
  }

  private static TraceSample sample(double sessionS) {
    return bath(sessionS, 40.06);
  }

  private static TraceSample bath(double sessionS, double bathC) {
    return new TraceSample(sessionS, bathC, 46.13, 40, 0.333, "HOLDING", true);
  }
}
