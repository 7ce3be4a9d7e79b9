package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** The contact test at each of its bounds, in single scans. */
class ContactBoundsTest {

  private static final int CLOSED_MS = 25_000;

  private static final Course.Line LEVEL = new Course.Line(0, 0, 0);

  /** Readings a second apart that end now. */
  private static Course course(int readings, DoubleUnaryOperator celsiusBackS) {
    Course course = Course.START;
    for (int i = readings - 1; i >= 0; i--) {
      long taken = (100L - i) * 1_000_000_000L;
      course = course.next(new ThermalInput.Sample(celsiusBackS.applyAsDouble(i), taken));
    }
    return course;
  }

  private static Course single(double celsius) {
    return course(1, back -> celsius);
  }

  private static ThermalInput.Sample old(Course course) {
    return new ThermalInput.Sample(course.celsius().at(0), Math.round(course.takenS().at(0) * 1e9));
  }

  /** One scan of a second that brings no new reading. */
  private static ContactWatch scan(ContactWatch watch, boolean seesPlate) {
    ThermalInput.Sample plate = seesPlate ? old(watch.hot()) : ThermalInput.Sample.NONE;
    ThermalInput in = new ThermalInput(1, false, State.PURGING, old(watch.bath()), plate);
    return watch.next(in, CLOSED_MS);
  }

  private static ContactStage calmed(Course hot, Course bath, boolean seesPlate, double offS) {
    Course.Line none = Course.Line.NONE;
    ContactWatch watch =
        new ContactWatch(ContactStage.CALMING, 0, offS, hot, bath, none, none, Optional.empty());
    return scan(watch, seesPlate).stage();
  }

  private static ContactStage calmed(DoubleUnaryOperator hot, DoubleUnaryOperator bath) {
    return calmed(course(30, hot), course(30, bath), true, 1e6);
  }

  private static Course level(int readings) {
    return course(readings, back -> 20);
  }

  @Test
  void theTestBeginsAfterEighteenSecondsOfLineOrTwentyEightOfABathAlone() {
    assertEquals(ContactStage.CALMING, calmed(level(18), level(40), true, 0));
    assertEquals(ContactStage.CALMING, calmed(level(40), level(18), true, 0));
    assertEquals(ContactStage.HEATER_ALONE, calmed(level(19), level(19), true, 0));
    assertEquals(ContactStage.CALMING, calmed(level(28), level(28), false, 1e6));
    assertEquals(ContactStage.HEATER_ALONE, calmed(level(29), level(29), false, 1e6));
    assertEquals(ContactStage.CALMING, calmed(level(29), level(29), false, 298));
    assertEquals(ContactStage.HEATER_ALONE, calmed(level(29), level(29), false, 299));
  }

  /** A bend of 0.02 K/s in the middle of the 20 s is no calm; nor is it in the bath. */
  @Test
  void aBentCourseIsWaitedFor() {
    DoubleUnaryOperator rest = back -> 20;
    for (int side : new int[] {-1, 1}) {
      DoubleUnaryOperator late = back -> back < 10 ? 20 + side * 0.025 * (10 - back) : 20;
      DoubleUnaryOperator early = back -> back > 10 ? 20 + side * 0.025 * (back - 10) : 20;
      DoubleUnaryOperator little = back -> back < 10 ? 20 + side * 0.018 * (10 - back) : 20;
      assertEquals(ContactStage.CALMING, calmed(late, rest));
      assertEquals(ContactStage.CALMING, calmed(rest, late));
      assertEquals(ContactStage.CALMING, calmed(early, rest));
      assertEquals(ContactStage.CALMING, calmed(rest, early));
      assertEquals(ContactStage.HEATER_ALONE, calmed(little, rest));
      assertEquals(ContactStage.HEATER_ALONE, calmed(rest, little));
    }
  }

  @Test
  void aPlateThatNearsItsBathByThreeHundredthsIsWaitedFor() {
    assertEquals(ContactStage.CALMING, calmed(back -> 40 + 0.031 * back, back -> 20));
    assertEquals(ContactStage.HEATER_ALONE, calmed(back -> 40 + 0.029 * back, back -> 20));
    assertEquals(
        ContactStage.HEATER_ALONE,
        calmed(back -> 40 + 0.1 * back, back -> 30 + 0.1 * back),
        "both fall alike");
  }

  private static ContactWatch at(
      ContactStage stage, double stageS, Course hot, Course bath, Course.Line before) {
    return new ContactWatch(stage, stageS, 1e6, hot, bath, before, LEVEL, Optional.empty());
  }

  private static Optional<Relay> accused(ContactStage stage, double hotK, boolean seesPlate) {
    Course hot = single(hotK);
    Course bath = seesPlate ? single(0) : hot;
    double stageS = seesPlate ? 3 : 24;
    return scan(at(stage, stageS, hot, bath, LEVEL), seesPlate).suspect();
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
  void whatCameIsWaitedForFourSecondsAndInABathTwentyFive() {
    Course rest = single(0);
    ContactStage stage = ContactStage.HEATER_AFTER;
    assertEquals(stage, scan(at(stage, 2.9, rest, rest, LEVEL), true).stage());
    assertEquals(ContactStage.SAFETY_ALONE, scan(at(stage, 3, rest, rest, LEVEL), true).stage());
    assertEquals(stage, scan(at(stage, 23.9, rest, rest, LEVEL), false).stage());
    assertEquals(ContactStage.SAFETY_ALONE, scan(at(stage, 24, rest, rest, LEVEL), false).stage());
  }

  @Test
  void eachRelayIsClosedForItsTime() {
    Course rest = single(0);
    ContactStage alone = ContactStage.HEATER_ALONE;
    assertEquals(alone, scan(at(alone, 23.9, rest, rest, LEVEL), true).stage());
    assertEquals(ContactStage.HEATER_AFTER, scan(at(alone, 24, rest, rest, LEVEL), true).stage());
    assertEquals(
        ContactStage.SAFETY_AFTER,
        scan(at(ContactStage.SAFETY_ALONE, 24, rest, rest, LEVEL), true).stage());
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void twoKelvinNeedNoMoreTime() {
    assertEquals(Optional.of(Relay.SAFETY), accusedWhileClosed(2, LEVEL));
    assertEquals(Optional.empty(), accusedWhileClosed(1.99, LEVEL));
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

  private static Optional<Relay> accusedWhileClosed(double hotK, Course.Line before) {
    ContactWatch watch = at(ContactStage.HEATER_ALONE, 5, single(hotK), single(0), before);
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
    ContactWatch next = scan(at(ContactStage.HEATER_ALONE, 5, hot, bath, LEVEL), seesPlate);
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
    ContactWatch heated =
        scan(at(ContactStage.HEATER_ALONE, 5, single(4), single(1.99), LEVEL), true);
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
