package trayward.host.bath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
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
        new Problem("litres", "-0.1", "0 to 20 L"), problem(Bath.check(0, EVENING, "x", -0.1, "")));
    assertInstanceOf(Checked.Good.class, Bath.check(0, EVENING, "an empty tray", 0, ""));
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
  void what_is_poured_within_its_ranges_is_no_problem() {
    assertTrue(wrong(EntryKind.POURED, Double.NaN, "water", 5000).isEmpty());
    assertTrue(wrong(EntryKind.POURED, 0, "x".repeat(80), 0.1).isEmpty());
    assertTrue(wrong(EntryKind.LEVEL_READ, 0, "", 20_000).isEmpty());
    assertTrue(wrong(EntryKind.EVAPORATED, 0, "", 0).isEmpty());
  }

  @Test
  void what_is_poured_outside_its_ranges_is_a_problem() {
    assertEquals(
        Optional.of(new Problem("millilitres", "5001.0", "more than 0, up to 5000 mL")),
        wrong(EntryKind.POURED, 0, "water", 5001));
    assertEquals("millilitres", field(EntryKind.POURED, 0, "water", Double.NaN));
    assertEquals("millilitres", field(EntryKind.POURED, 0, "water", -5));
    assertEquals("millilitres", field(EntryKind.POURED_AWAY, 0, "", 0));
    assertEquals("millilitres", field(EntryKind.LEVEL_READ, 0, "", 20_001));
    assertEquals("what", field(EntryKind.POURED, 0, " ", 100));
    assertEquals("what", field(EntryKind.POURED, 0, "x".repeat(81), 100));
    assertEquals("session_s", field(EntryKind.POURED, -1, "water", 100));
    assertEquals("session_s", field(EntryKind.POURED, Double.POSITIVE_INFINITY, "water", 100));
  }

  @Test
  void what_is_poured_is_between_ice_and_boiling_and_diluted_as_it_is_written() {
    assertEquals(
        "celsius",
        BookEntry.problem(EntryKind.POURED, 0, "water", "", 1, OptionalDouble.of(101))
            .orElseThrow()
            .field());
    Problem colon =
        BookEntry.problem(EntryKind.POURED, 0, "A", "1:7", 1, OptionalDouble.empty()).orElseThrow();
    assertEquals("dilution", colon.field());
    assertTrue(colon.accepted().contains("1+7"), colon.accepted());
    assertTrue(colon.accepted().contains("1 in 7 by others"), colon.accepted());
  }

  @Test
  void what_was_not_checked_first_cannot_be_made() {
    assertThrows(IllegalArgumentException.class, () -> new Bath(1, EVENING, "", 1, ""));
    assertThrows(
        IllegalArgumentException.class, () -> BookEntry.poured(1, 1, EVENING, 0, "water", -1));
  }

  private static Optional<Problem> wrong(
      EntryKind kind, double sessionS, String what, double millilitres) {
    return BookEntry.problem(kind, sessionS, what, "", millilitres, OptionalDouble.empty());
  }

  private static String field(EntryKind kind, double sessionS, String what, double millilitres) {
    return wrong(kind, sessionS, what, millilitres).orElseThrow().field();
  }

  private static <T> Problem problem(Checked<T> checked) {
    return checked instanceof Checked.Bad<T> bad ? bad.problem() : new Problem("none", "", "");
  }
}
