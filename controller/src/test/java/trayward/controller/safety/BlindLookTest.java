package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** When a bath that does not answer its heat is looked at, and what follows. */
class BlindLookTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;

  private static ThermalInput input(boolean heat, double bathC, State state) {
    ThermalInput.Sample bath = new ThermalInput.Sample(bathC, 1);
    return new ThermalInput(1, heat, state, bath, ThermalInput.Sample.NONE);
  }

  private static BlindLook next(BlindLook look, boolean heat, double bathC) {
    return look.next(input(heat, bathC, State.HEATING), true, TRAY, RoomModel.REFERENCE);
  }

  /** Seconds of a course of the bath under {@code duty} tenths of heat, until a look begins. */
  private static BlindLook course(
      BlindLook from, int seconds, int duty, IntToDoubleFunction bathC) {
    BlindLook now = from;
    for (int s = 1; s <= seconds && !now.looking(); s++) {
      now = next(now, s % 10 < duty, bathC.applyAsDouble(s));
    }
    return now;
  }

  private static BlindLook full(IntToDoubleFunction bathC) {
    return course(BlindLook.START, 400, 10, bathC);
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void fullHeatThatDoesNotRaiseTheBathIsLookedAt() {
    assertTrue(full(s -> 40).looking());
    assertTrue(full(s -> 40 + 0.0004 * s).looking());
    assertTrue(full(s -> 40 - 0.02 * s).looking());
  }

  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void aRiseOrAPourOrABentCourseIsNot() {
    assertFalse(full(s -> 40 + 0.0006 * s).looking());
    assertFalse(full(s -> 90 - 0.2 * s).looking(), "no loss cools a bath so fast");
    assertFalse(full(s -> s / 30 % 2 == 0 ? 40 : 39).looking(), "steps are no course");
    assertFalse(course(BlindLook.START, 400, 8, s -> 40).looking(), "held, not full heat");
  }

  /** Twice the loss at 40 °C into 0.8 L, and 0.004 K/s of doubt: as fast as a bath cools. */
  @Test
  void whatCoolsFasterThanAnyBathWasPouredInto() {
    TrayModel cold = new TrayModel(1, 0.072, 1100, 18, 0, 0.5, 250, 0);
    BlindLook slow = BlindLook.START;
    BlindLook fast = BlindLook.START;
    for (int s = 1; s <= 300; s++) {
      ThermalInput in = input(!slow.looking(), 40 - 0.0039 * s, State.HEATING);
      slow = slow.next(in, true, cold, RoomModel.REFERENCE);
      ThermalInput faster = input(true, 40 - 0.0041 * s, State.HEATING);
      fast = fast.next(faster, true, cold, RoomModel.REFERENCE);
      assertFalse(fast.looking());
    }
    assertTrue(slow.looking() || slow.failed() || slow.restS() > 0);
  }

  @Test
  void aSecondLookWaitsForAMinuteOfItsOwnCourse() {
    BlindLook look = full(s -> 40);
    int at = 0;
    while (look.looking()) {
      look = next(look, false, 40 - 0.02 * ++at);
    }
    assertTrue(at < 30, "missed after " + at + " s");
    assertEquals(360, look.restS());
    assertEquals(0, look.soundSlope(), 1e-9);
    assertEquals(0, look.bath().count());
    assertFalse(look.failed());
    assertFalse(course(look, 355, 10, s -> 39).looking());
    assertTrue(course(look, 365, 10, s -> 39).looking());
    assertFalse(course(look, 300, 10, s -> 39 - 0.0029 * s).looking());
    assertTrue(course(look, 300, 10, s -> 39 - 0.0031 * s).looking(), "it falls faster now");
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aBathThatGoesOnAsBeforeGotNoHeat() {
    BlindLook look = full(s -> 20);
    for (int s = 0; look.looking(); s++) {
      assertTrue(s < 340, "no look is begun that lasts longer");
      look = next(look, false, 20);
    }
    assertTrue(look.failed());
    assertFalse(look.heated(), "at the room's own temperature it need not cool");
    assertEquals(0, look.restS());
  }

  /** Heat held off, and 20 K over its room it does not cool: a contact is welded. */
  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aWarmBathThatGoesOnAsBeforeIsHeatedAllTheSame() {
    BlindLook look = full(s -> 40);
    while (look.looking()) {
      look = next(look, false, 40);
    }
    assertTrue(look.heated());
    assertFalse(look.failed());
  }

  @Test
  void aBathThatRisesWithoutHeatTeachesNothing() {
    BlindLook look = full(s -> 40);
    while (look.looking()) {
      look = next(look, false, 40.5);
    }
    assertFalse(look.failed());
    assertEquals(0, look.restS());
    assertEquals(Double.NEGATIVE_INFINITY, look.soundSlope());
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void moreHeatThanOfLateUnderAFallingBathIsLookedAt() {
    BlindLook held = course(BlindLook.START, 900, 4, s -> 40);
    assertFalse(held.looking());
    assertEquals(0.4, held.neededShare(), 0.03);
    assertTrue(course(held, 200, 7, s -> 40 - 0.003 * s).looking());
    assertFalse(course(held, 200, 7, s -> 40 - 0.0007 * s).looking(), "within noise");
    assertFalse(course(held, 200, 4, s -> 40 - 0.003 * s).looking(), "no more heat than before");
    assertFalse(course(held, 20, 7, s -> 40 - 0.003 * s).looking(), "not long enough");
  }

  @Test
  void nothingIsLookedAtWhereThereIsNothingToLookAt() {
    BlindLook look = full(s -> 40);
    RoomModel room = RoomModel.REFERENCE;
    assertSame(BlindLook.START, look.next(input(true, 40, State.PURGING), true, TRAY, room));
    ThermalInput.Sample some = new ThermalInput.Sample(40, 1);
    ThermalInput.Sample none = ThermalInput.Sample.NONE;
    ThermalInput plate = new ThermalInput(1, true, State.HEATING, some, some);
    assertSame(BlindLook.START, look.next(plate, true, TRAY, room));
    ThermalInput blind = new ThermalInput(1, true, State.HEATING, none, none);
    assertSame(BlindLook.START, look.next(blind, true, TRAY, room));
    BlindLook unwanted = BlindLook.START;
    for (int s = 0; s < 400; s++) {
      unwanted = unwanted.next(input(true, 40, State.HEATING), false, TRAY, room);
      assertFalse(unwanted.looking(), "something else is about to decide");
    }
  }
}
