package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static trayward.controller.safety.ContactScan.LEVEL;
import static trayward.controller.safety.ContactScan.course;
import static trayward.controller.safety.ContactScan.scan;
import static trayward.controller.safety.ContactScan.single;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** What accuses a contact and what begins the test anew, at each bound and in single scans. */
class ContactBoundsTest {

  private static ContactWatch at(ContactStage stage, double stageS, Course hot, Course bath) {
    return new ContactWatch(stage, stageS, 1e6, hot, bath, LEVEL, LEVEL, Optional.empty());
  }

  private static Optional<Relay> accused(ContactStage stage, double hotK, boolean seesPlate) {
    Course hot = single(hotK);
    Course bath = seesPlate ? single(0) : hot;
    double stageS = seesPlate ? 3 : 24;
    return scan(at(stage, stageS, hot, bath), seesPlate).suspect();
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void sevenTenthsOfAPlateAndTwoOfABathAccuse() {
    assertEquals(Optional.of(Relay.SAFETY), accused(ContactStage.HEATER_AFTER, 0.7, true));
    assertEquals(Optional.of(Relay.HEATER), accused(ContactStage.SAFETY_AFTER, 0.7, true));
    assertEquals(Optional.of(Relay.SAFETY), accused(ContactStage.HEATER_AFTER, 0.2, false));
    assertEquals(Optional.of(Relay.HEATER), accused(ContactStage.SAFETY_AFTER, 0.2, false));
  }

  @Test
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void lessAccusesNobody() {
    assertEquals(Optional.empty(), accused(ContactStage.HEATER_AFTER, 0.69, true));
    assertEquals(Optional.empty(), accused(ContactStage.HEATER_AFTER, 0.19, false));
    Course fallen = single(-0.1); // less than it would have: covered, and no warmer for it
    Course.Line falling = new Course.Line(100, -0.5, 0);
    ContactWatch covered =
        new ContactWatch(
            ContactStage.HEATER_AFTER, 24, 1e6, fallen, fallen, falling, falling, Optional.empty());
    assertEquals(Optional.of(Relay.SAFETY), scan(covered, false).suspect(), "0.4 K warmer");
    Course.Line steep = new Course.Line(90, 0, -0.05);
    ContactWatch cooled =
        new ContactWatch(
            ContactStage.HEATER_AFTER, 24, 1e6, fallen, fallen, steep, steep, Optional.empty());
    assertEquals(ContactStage.SAFETY_ALONE, scan(cooled, false).stage(), "0.1 K colder");
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void twoKelvinNeedNoMoreTime() {
    assertEquals(Optional.of(Relay.SAFETY), accusedWhileClosed(2));
    assertEquals(Optional.empty(), accusedWhileClosed(1.99));
    Course.Line falling = new Course.Line(90, 1, -0.1); // at 100 s it would be at 0
    Course.Line alike = new Course.Line(90, 0, -0.1); // the bath falls as fast: nothing nears
    ContactWatch watch =
        new ContactWatch(
            ContactStage.HEATER_ALONE,
            5,
            1e6,
            single(2.5),
            single(-1),
            falling,
            alike,
            Optional.empty());
    assertEquals(Optional.empty(), scan(watch, true).suspect(), "it has not risen by 2 K");
  }

  private static Optional<Relay> accusedWhileClosed(double hotK) {
    ContactWatch watch = at(ContactStage.HEATER_ALONE, 5, single(hotK), single(0));
    return scan(watch, true).suspect();
  }

  /**
   * A plate that forgets its gap to the bath with 61 s. Seen from the middle of the 20 s of line it
   * follows G exp(-t / 61), the line its tangent; the difference is no heat.
   */
  @Test
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void aPlateThatNearsItsBathLeavesItsLineByItselfByTheExponential() {
    for (double gap : new double[] {1.525, -1.525}) {
      double slope = -gap / 61;
      double time = 40 + 10; // 40 s after the newest reading of the line, 50 s after its middle
      double own = gap * Math.exp(-time / 61) - (gap - gap * time / 61);
      // The bath itself falls by 0.004 K/s.
      Course.Line hot = new Course.Line(60, 30, slope - 0.004);
      Course.Line bath = new Course.Line(60, 20, -0.004);
      double expected = 30 + (slope - 0.004) * 40 + own;
      assertEquals(Optional.empty(), neared(expected + 0.69, hot, bath));
      assertEquals(Optional.of(Relay.SAFETY), neared(expected + 0.71, hot, bath));
    }
  }

  private static Optional<Relay> neared(double hotC, Course.Line hot, Course.Line bath) {
    ContactWatch watch =
        new ContactWatch(
            ContactStage.HEATER_AFTER,
            3,
            1e6,
            single(hotC),
            single(bath.at(100)),
            hot,
            bath,
            Optional.empty());
    return scan(watch, true).suspect();
  }

  private static boolean begunAnew(Course hot, Course bath, boolean seesPlate) {
    ContactWatch next = scan(at(ContactStage.HEATER_ALONE, 5, hot, bath), seesPlate);
    return next.hot().count() == 0 && next.suspect().isEmpty();
  }

  @Test
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void aPourIsABathThatBendsByAKelvinAndByHalfOfThePlate() {
    for (int side : new int[] {-1, 1}) {
      assertEquals(true, begunAnew(single(0), single(side), true));
      assertEquals(false, begunAnew(single(0), single(side * 0.99), true));
      assertEquals(true, begunAnew(single(4), single(side * 2), true));
      assertEquals(true, begunAnew(single(4), single(side * 3), true));
    }
    ContactWatch heated = scan(at(ContactStage.HEATER_ALONE, 5, single(4), single(1.99)), true);
    assertEquals(Optional.of(Relay.SAFETY), heated.suspect(), "the bath of a hot plate");
  }

  @Test
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void withoutAPlateProbeABathThatFallsOrLeapsOrBendsByTwoKelvinWasPouredInto() {
    assertEquals(false, begunAnew(single(-0.2), single(-0.2), false));
    assertEquals(true, begunAnew(single(-0.21), single(-0.21), false));
    assertEquals(false, begunAnew(single(1.99), single(1.99), false));
    assertEquals(true, begunAnew(single(2), single(2), false), "and accuses nobody");
    Course leap = course(2, back -> back == 0 ? 0.75 : 0);
    Course step = course(2, back -> back == 0 ? 0.74 : 0);
    assertEquals(true, begunAnew(leap, leap, false));
    assertEquals(false, begunAnew(step, step, false));
  }

  @Test
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void aPlateReadingThatLeapsByFiveKelvinIsAProbeMoved() {
    Course leap = course(2, back -> back == 0 ? -5 : 0);
    Course step = course(2, back -> back == 0 ? -4.9 : 0);
    assertEquals(true, begunAnew(leap, single(0), true));
    assertEquals(false, begunAnew(step, single(0), true));
  }

  @Test
  void theAccusedContactIsTestedFirstAndNamedWhenItBendsAgain() {
    Course hot = single(2.5);
    for (ContactStage stage :
        new ContactStage[] {ContactStage.HEATER_ALONE, ContactStage.SAFETY_ALONE}) {
      Relay accused = stage == ContactStage.HEATER_ALONE ? Relay.SAFETY : Relay.HEATER;
      ContactWatch again =
          new ContactWatch(stage, 5, 1e6, hot, single(0), LEVEL, LEVEL, Optional.of(accused));
      assertEquals(Optional.of(accused), scan(again, true).welded());
      ContactWatch other =
          new ContactWatch(
              stage, 5, 1e6, hot, single(0), LEVEL, LEVEL, Optional.of(accused.other()));
      assertEquals(Optional.empty(), scan(other, true).welded());
      assertEquals(Optional.of(accused), scan(other, true).suspect());
    }
  }
}
