package trayward.host.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.EMERGENCE;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.session.Samples.EVENING;
import static trayward.host.session.Samples.mark;
import static trayward.host.session.Samples.print;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PrintTest {

  @Test
  void a_print_is_in_progress_from_in_to_pull() {
    assertTrue(print(mark(IN, 10)).inProgress());
    assertTrue(print(mark(IN, 10), mark(EMERGENCE, 60)).inProgress());
    assertFalse(print(mark(IN, 10), mark(EMERGENCE, 60), mark(PULL, 90)).inProgress());
  }

  @Test
  void a_print_left_without_a_pull_is_not_in_progress() {
    Print left = print(OptionalDouble.of(200), mark(IN, 10));
    assertTrue(left.closed());
    assertFalse(left.inProgress());
    assertEquals(OptionalDouble.of(200), left.endS());
  }

  @Test
  void a_print_whose_marks_were_all_taken_back_is_not_in_progress() {
    assertFalse(print().inProgress());
    assertEquals(Optional.empty(), print().inAt());
  }

  @Test
  void elapsed_times_count_from_in() {
    Print print = print(mark(IN, 10.5), mark(EMERGENCE, 60.75), mark(PULL, 91));
    assertEquals(OptionalDouble.of(0), print.elapsedS(IN));
    assertEquals(OptionalDouble.of(50.25), print.elapsedS(EMERGENCE));
    assertEquals(OptionalDouble.of(80.5), print.elapsedS(PULL));
    assertEquals(OptionalDouble.of(91), print.endS());
    assertEquals(OptionalDouble.empty(), print(mark(IN, 10)).elapsedS(PULL));
  }

  @Test
  void a_step_of_the_wall_clock_changes_no_elapsed_time() {
    Instant anHourBack = EVENING.minus(Duration.ofHours(1));
    Mark pull = new Mark(2, PULL, 90, anHourBack, "pedal", OptionalDouble.empty());
    assertEquals(OptionalDouble.of(80), print(mark(IN, 10), pull).elapsedS(PULL));
  }

  @Test
  void the_marks_cannot_be_changed_afterwards() {
    List<Mark> marks = new ArrayList<>(List.of(mark(IN, 10)));
    Print print = new Print(1, 1, EVENING, marks, "", "", OptionalDouble.empty());
    marks.add(mark(PULL, 20));
    assertEquals(1, print.marks().size());
    assertThrows(UnsupportedOperationException.class, () -> print.marks().clear());
  }

  @Test
  void marks_out_of_order_and_texts_beyond_their_bounds_are_refused() {
    assertThrows(IllegalArgumentException.class, () -> print(mark(IN, 10), mark(EMERGENCE, 9)));
    assertThrows(
        IllegalArgumentException.class,
        () -> print(Collections.nCopies(33, mark(IN, 1)).toArray(new Mark[0])));
    assertThrows(IllegalArgumentException.class, () -> texts("x".repeat(201), ""));
    assertThrows(IllegalArgumentException.class, () -> texts("", "x".repeat(2001)));
    assertEquals(2000, texts("x".repeat(200), "x".repeat(2000)).notes().length());
  }

  @Test
  void a_session_has_an_end_and_an_ending_or_neither() {
    assertTrue(new Session(1, EVENING, Optional.empty(), "", false).open());
    assertFalse(new Session(1, EVENING, Optional.of(EVENING), "stopped", false).open());
    assertThrows(
        IllegalArgumentException.class,
        () -> new Session(1, EVENING, Optional.empty(), "stopped", false));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Session(1, EVENING, Optional.of(EVENING), "", false));
  }

  @Test
  void a_moment_and_a_sample_have_a_time_a_monotonic_clock_gives() {
    for (double bad : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThrows(IllegalArgumentException.class, () -> new Moment(bad, EVENING));
      assertThrows(IllegalArgumentException.class, () -> Samples.bath(bad, 40));
    }
    assertEquals(0, new Moment(0, EVENING).sessionS());
  }

  @Test
  void a_sample_turns_what_is_not_finite_into_not_valid() {
    TraceSample sample =
        new TraceSample(1, Double.POSITIVE_INFINITY, 45, Double.NaN, 1.7, "HEATING", true);
    assertFalse(sample.bathValid());
    assertTrue(Double.isNaN(sample.bathC()));
    assertEquals(1, sample.duty());
    assertTrue(Samples.bath(1, 40).bathValid());
  }

  private static Print texts(String title, String notes) {
    return new Print(1, 1, EVENING, List.of(), title, notes, OptionalDouble.empty());
  }
}
