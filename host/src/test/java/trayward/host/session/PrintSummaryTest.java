package trayward.host.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.EMERGENCE;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.session.Samples.bath;
import static trayward.host.session.Samples.mark;
import static trayward.host.session.Samples.print;
import static trayward.host.session.Samples.trace;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PrintSummaryTest {

  private static final Print TO_PULL = print(mark(IN, 10), mark(PULL, 12));

  @Test
  void mean_and_deviation_agree_with_the_certified_values_of_a_reference_data_set() {
    // Source: NIST StRD, univariate summary statistics, data set NumAcc1: 10000001, 10000003,
    // 10000002; certified sample mean 10000002 (exact), sample standard deviation 1 (exact).
    PrintSummary sums = PrintSummary.of(TO_PULL, trace(10, 10000001, 10000003, 10000002));
    assertEquals(OptionalDouble.of(10000002), sums.meanC());
    assertEquals(OptionalDouble.of(1), sums.deviationK());
    assertEquals(OptionalDouble.of(10000001), sums.minC());
    assertEquals(OptionalDouble.of(10000003), sums.maxC());
    assertEquals(3, sums.samples());
  }

  @Test
  void deviation_divides_by_one_less_than_the_count() {
    // By hand: mean 40; squares 1 + 0 + 1 + 4 + 4 = 10; 10 / 4 = 2.5; root 1.58113883.
    Print print = print(mark(IN, 0), mark(PULL, 4));
    PrintSummary sums = PrintSummary.of(print, trace(0, 39, 40, 41, 42, 38));
    assertEquals(40, sums.meanC().orElseThrow(), 1e-12);
    assertEquals(Math.sqrt(2.5), sums.deviationK().orElseThrow(), 1e-12);
  }

  @Test
  void temperatures_at_the_marks_lie_on_the_line_between_neighbours() {
    // By hand: at 10.25 s a quarter of the way from 40.0 to 40.4; at 11.5 s half of 40.4 to 39.8.
    Print print = print(mark(IN, 10.25), mark(EMERGENCE, 11.5), mark(PULL, 13));
    PrintSummary sums = PrintSummary.of(print, trace(10, 40.0, 40.4, 39.8, 40.2, 41));
    assertEquals(40.1, sums.atInC().orElseThrow(), 1e-9);
    assertEquals(40.1, sums.atEmergenceC().orElseThrow(), 1e-9);
    assertEquals(40.2, sums.atPullC().orElseThrow(), 1e-9);
    assertEquals(OptionalDouble.of(1.25), sums.emergenceS());
    assertEquals(OptionalDouble.of(2.75), sums.pullS());
  }

  @Test
  void samples_before_in_and_after_pull_do_not_count() {
    PrintSummary sums = PrintSummary.of(TO_PULL, trace(8, 20, 20, 40, 40, 40, 60, 60));
    assertEquals(3, sums.samples());
    assertEquals(OptionalDouble.of(40), sums.minC());
    assertEquals(OptionalDouble.of(40), sums.maxC());
    assertEquals(OptionalDouble.of(0), sums.deviationK());
  }

  @Test
  void samples_that_are_not_valid_do_not_count_and_are_bridged() {
    PrintSummary sums =
        PrintSummary.of(
            print(mark(IN, 10), mark(EMERGENCE, 12), mark(PULL, 14)),
            trace(10, 40, Double.NaN, Double.NaN, Double.NaN, 42));
    assertEquals(2, sums.samples());
    assertEquals(41, sums.atEmergenceC().orElseThrow(), 1e-9);
  }

  @Test
  void across_a_long_gap_the_reading_kept_with_the_mark_is_taken() {
    Print print = print(mark(IN, 5, OptionalDouble.of(39.5)), mark(PULL, 30));
    List<TraceSample> gap = List.of(bath(0, 40), bath(10.5, 42), bath(40, 42));
    PrintSummary sums = PrintSummary.of(print, gap);
    assertEquals(OptionalDouble.of(39.5), sums.atInC());
    assertEquals(OptionalDouble.empty(), sums.atPullC());
  }

  @Test
  void across_a_gap_of_just_ten_seconds_the_line_is_taken() {
    Print print = print(mark(IN, 5, OptionalDouble.of(39.5)));
    PrintSummary sums = PrintSummary.of(print, List.of(bath(0, 40), bath(10, 42)));
    assertEquals(41, sums.atInC().orElseThrow(), 1e-9);
  }

  @Test
  void nothing_is_extrapolated() {
    Print print = print(mark(IN, 5, OptionalDouble.of(39.5)), mark(PULL, 30));
    PrintSummary sums = PrintSummary.of(print, trace(6, 40, 40));
    assertEquals(OptionalDouble.of(39.5), sums.atInC());
    assertEquals(OptionalDouble.empty(), sums.atPullC());
  }

  @Test
  void a_print_in_progress_counts_to_the_last_sample() {
    PrintSummary sums = PrintSummary.of(print(mark(IN, 10)), trace(9, 20, 40, 40, 40, 41));
    assertEquals(4, sums.samples());
    assertEquals(OptionalDouble.of(41), sums.maxC());
    assertEquals(OptionalDouble.empty(), sums.pullS());
  }

  @Test
  void a_print_left_without_a_pull_counts_to_where_it_was_left() {
    Print left = print(OptionalDouble.of(11), mark(IN, 10));
    PrintSummary sums = PrintSummary.of(left, trace(9, 20, 40, 40, 60, 60));
    assertEquals(2, sums.samples());
    assertEquals(OptionalDouble.of(40), sums.maxC());
  }

  @Test
  void without_samples_nothing_is_made_up() {
    PrintSummary sums = PrintSummary.of(TO_PULL, List.of());
    assertEquals(0, sums.samples());
    assertTrue(sums.meanC().isEmpty() && sums.minC().isEmpty() && sums.maxC().isEmpty());
    assertTrue(sums.deviationK().isEmpty() && sums.atInC().isEmpty());
    assertEquals(OptionalDouble.of(2), sums.pullS());
    assertTrue(PrintSummary.of(TO_PULL, trace(10, 40)).deviationK().isEmpty());
  }
}
