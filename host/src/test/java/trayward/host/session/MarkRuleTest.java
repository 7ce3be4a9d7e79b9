package trayward.host.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.EMERGENCE;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.session.Samples.mark;
import static trayward.host.session.Samples.print;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MarkRuleTest {

  private static final Optional<Print> NONE = Optional.empty();
  private static final Optional<Print> JUST_IN = Optional.of(print(mark(IN, 100)));
  private static final Optional<Print> EMERGED =
      Optional.of(print(mark(IN, 100), mark(EMERGENCE, 220)));
  private static final Optional<Print> PULLED_UNSEEN =
      Optional.of(print(mark(IN, 100), mark(PULL, 300)));
  private static final Optional<Print> LEFT =
      Optional.of(print(OptionalDouble.of(400), mark(IN, 100)));

  @Test
  void in_is_accepted_from_every_place() {
    for (Optional<Print> latest : List.of(NONE, JUST_IN, EMERGED, PULLED_UNSEEN, LEFT)) {
      assertInstanceOf(MarkRule.Accepted.class, MarkRule.judge(latest, IN, 500));
    }
  }

  @Test
  void emergence_and_pull_are_accepted_after_in() {
    assertInstanceOf(MarkRule.Accepted.class, MarkRule.judge(JUST_IN, EMERGENCE, 220));
    assertInstanceOf(MarkRule.Accepted.class, MarkRule.judge(EMERGED, PULL, 300));
  }

  @Test
  void pull_without_emergence_is_accepted() {
    assertInstanceOf(MarkRule.Accepted.class, MarkRule.judge(JUST_IN, PULL, 300));
  }

  @Test
  void emergence_and_pull_are_refused_without_a_print_in_the_developer() {
    assertEquals("no print is in the developer", refusal(NONE, EMERGENCE, 5));
    assertEquals("no print is in the developer", refusal(NONE, PULL, 5));
    assertEquals("no print is in the developer", refusal(LEFT, PULL, 500));
  }

  @Test
  void marks_after_the_pull_are_refused_and_name_the_print() {
    assertEquals("print 7 has been pulled already", refusal(PULLED_UNSEEN, EMERGENCE, 310));
    assertEquals("print 7 has been pulled already", refusal(PULLED_UNSEEN, PULL, 310));
  }

  @Test
  void a_second_emergence_is_refused_and_says_when_the_first_was() {
    assertEquals(
        "emergence of print 7 is marked already, at 120.0 s", refusal(EMERGED, EMERGENCE, 240));
  }

  @Test
  void a_mark_of_the_same_kind_within_a_second_is_the_same_mark() {
    assertDuplicate(JUST_IN, IN, 101);
    assertDuplicate(EMERGED, EMERGENCE, 220.4);
    assertDuplicate(PULLED_UNSEEN, PULL, 300.9);
    assertDuplicate(JUST_IN, IN, 99.5);
  }

  @Test
  void a_mark_of_the_same_kind_after_more_than_a_second_is_another_one() {
    assertInstanceOf(MarkRule.Accepted.class, MarkRule.judge(JUST_IN, IN, 101.001));
    assertEquals("print 7 has been pulled already", refusal(PULLED_UNSEEN, PULL, 301.001));
  }

  @Test
  void a_mark_before_the_last_one_is_refused() {
    assertEquals("a later mark has been made already", refusal(EMERGED, PULL, 219));
    assertEquals("a later mark has been made already", refusal(EMERGED, IN, 150));
    assertEquals("a later mark has been made already", refusal(JUST_IN, PULL, Double.MIN_VALUE));
  }

  @Test
  void next_goes_from_in_to_emergence_to_pull_to_in() {
    assertEquals(IN, MarkRule.next(NONE));
    assertEquals(EMERGENCE, MarkRule.next(JUST_IN));
    assertEquals(PULL, MarkRule.next(EMERGED));
    assertEquals(IN, MarkRule.next(PULLED_UNSEEN));
    assertEquals(IN, MarkRule.next(LEFT));
  }

  @Test
  void what_next_gives_is_always_accepted() {
    for (Optional<Print> latest : List.of(NONE, JUST_IN, EMERGED, PULLED_UNSEEN, LEFT)) {
      assertInstanceOf(
          MarkRule.Accepted.class, MarkRule.judge(latest, MarkRule.next(latest), 1000));
    }
  }

  @Test
  void a_pedal_that_bounces_means_the_same_mark_again() {
    assertEquals(IN, MarkRule.pressed(NONE, 100));
    assertEquals(IN, MarkRule.pressed(JUST_IN, 100.3));
    assertEquals(EMERGENCE, MarkRule.pressed(JUST_IN, 101.5));
    assertEquals(EMERGENCE, MarkRule.pressed(EMERGED, 220.3));
    assertEquals(PULL, MarkRule.pressed(EMERGED, 300));
    assertEquals(PULL, MarkRule.pressed(PULLED_UNSEEN, 300.9));
    assertEquals(IN, MarkRule.pressed(PULLED_UNSEEN, 310));
  }

  private static String refusal(Optional<Print> latest, MarkKind kind, double sessionS) {
    return assertInstanceOf(MarkRule.Refused.class, MarkRule.judge(latest, kind, sessionS)).why();
  }

  private static void assertDuplicate(Optional<Print> latest, MarkKind kind, double sessionS) {
    MarkRule.Duplicate same =
        assertInstanceOf(MarkRule.Duplicate.class, MarkRule.judge(latest, kind, sessionS));
    assertTrue(latest.orElseThrow().marks().contains(same.existing()));
    assertEquals(kind, same.existing().kind());
  }
}
