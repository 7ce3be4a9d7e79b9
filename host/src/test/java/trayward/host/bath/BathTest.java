package trayward.host.bath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class BathTest {

  private static final Instant EVENING = Instant.parse("2026-03-01T20:00:00Z");

  @Test
  void a_bath_within_its_ranges_is_good() {
    assertEquals(
        new Checked.Good<>(new Bath(3, EVENING, "1+20, half old", 1.0, "")),
        Bath.check(3, EVENING, "1+20, half old", 1.0, ""));
    assertInstanceOf(Checked.Good.class, Bath.check(0, EVENING, "x".repeat(80), 20, ""));
    assertInstanceOf(Checked.Good.class, Bath.check(0, EVENING, "x", 0.001, "x".repeat(2000)));
  }

  @Test
  void a_name_that_is_blank_or_too_long_is_a_problem() {
    assertEquals(
        new Problem("name", "", "1 to 80 characters"), problem(Bath.check(0, EVENING, "", 1, "")));
    assertEquals("name", problem(Bath.check(0, EVENING, " \t", 1, "")).field());
    assertEquals("name", problem(Bath.check(0, EVENING, "x".repeat(81), 1, "")).field());
  }

  @Test
  void a_volume_outside_its_range_is_a_problem_that_says_what_is_accepted() {
    assertEquals(
        new Problem("litres", "0.0", "more than 0, up to 20 L"),
        problem(Bath.check(0, EVENING, "x", 0, "")));
    for (double bad : new double[] {-1, 20.01, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertEquals("litres", problem(Bath.check(0, EVENING, "x", bad, "")).field());
    }
  }

  @Test
  void a_note_too_long_is_a_problem_that_echoes_little_of_it() {
    Problem problem = problem(Bath.check(0, EVENING, "x", 1, "n".repeat(2001)));
    assertEquals("note", problem.field());
    assertEquals(80, problem.found().length());
    assertTrue(problem.found().endsWith("…"));
  }

  @Test
  void an_addition_within_its_ranges_is_good() {
    assertInstanceOf(Checked.Good.class, Addition.check(0, 1, EVENING, Double.NaN, "water", 5000));
    assertInstanceOf(Checked.Good.class, Addition.check(0, 1, EVENING, 0, "x".repeat(80), 0.1));
  }

  @Test
  void an_addition_outside_its_ranges_is_a_problem() {
    assertEquals(
        new Problem("millilitres", "5001.0", "more than 0, up to 5000 mL"),
        problem(Addition.check(0, 1, EVENING, 0, "water", 5001)));
    assertEquals("millilitres", problem(addition(0, "water", Double.NaN)).field());
    assertEquals("what", problem(addition(0, " ", 100)).field());
    assertEquals("what", problem(addition(0, "x".repeat(81), 100)).field());
    assertEquals("session_s", problem(addition(-1, "water", 100)).field());
    assertEquals("session_s", problem(addition(Double.POSITIVE_INFINITY, "water", 100)).field());
  }

  @Test
  void what_was_not_checked_first_cannot_be_made() {
    assertThrows(IllegalArgumentException.class, () -> new Bath(1, EVENING, "", 1, ""));
    assertThrows(IllegalArgumentException.class, () -> new Addition(1, 1, EVENING, 0, "water", -1));
  }

  @Test
  void the_litres_poured_are_those_made_up_and_those_added_to_this_bath() {
    // By hand: 1.0 L + 250 mL + 50 mL; the third addition went into another bath.
    Bath bath = new Bath(3, EVENING, "x", 1.0, "");
    List<Addition> additions =
        List.of(
            new Addition(1, 3, EVENING, 10, "water", 250),
            new Addition(2, 3, EVENING, Double.NaN, "stock A", 50),
            new Addition(3, 4, EVENING, 10, "water", 500));
    assertEquals(1.3, bath.litresWith(additions), 1e-12);
    assertEquals(1.0, bath.litresWith(List.of()), 1e-12);
  }

  private static Checked<Addition> addition(double sessionS, String what, double millilitres) {
    return Addition.check(0, 1, EVENING, sessionS, what, millilitres);
  }

  private static <T> Problem problem(Checked<T> checked) {
    return checked instanceof Checked.Bad<T> bad ? bad.problem() : new Problem("none", "", "");
  }
}
