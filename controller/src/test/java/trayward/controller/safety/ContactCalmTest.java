package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static trayward.controller.safety.ContactScan.LEVEL;
import static trayward.controller.safety.ContactScan.course;
import static trayward.controller.safety.ContactScan.scan;
import static trayward.controller.safety.ContactScan.single;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** When the contact test begins, and how long its stages last. */
class ContactCalmTest {

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

  private static ContactStage after(ContactStage stage, double stageS, boolean seesPlate) {
    Course rest = single(0);
    ContactWatch watch =
        new ContactWatch(stage, stageS, 1e6, rest, rest, LEVEL, LEVEL, Optional.empty());
    return scan(watch, seesPlate).stage();
  }

  @Test
  void whatCameIsWaitedForFourSecondsAndInABathTwentyFive() {
    ContactStage stage = ContactStage.HEATER_AFTER;
    assertEquals(stage, after(stage, 2.9, true));
    assertEquals(ContactStage.SAFETY_ALONE, after(stage, 3, true));
    assertEquals(stage, after(stage, 23.9, false));
    assertEquals(ContactStage.SAFETY_ALONE, after(stage, 24, false));
  }

  @Test
  void eachRelayIsClosedForItsTime() {
    ContactStage alone = ContactStage.HEATER_ALONE;
    assertEquals(alone, after(alone, 23.9, true));
    assertEquals(ContactStage.HEATER_AFTER, after(alone, 24, true));
    assertEquals(ContactStage.SAFETY_AFTER, after(ContactStage.SAFETY_ALONE, 24, true));
  }
}
