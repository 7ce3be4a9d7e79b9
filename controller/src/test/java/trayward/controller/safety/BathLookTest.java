package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** A bath whose heat is held off, beside the course it had. */
class BathLookTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;
  private static final RoomModel ROOM = RoomModel.REFERENCE;

  /** Plates that passed on all heat and pass on none at once: 0.001 K missed each second. */
  private static final HeatMissed.Least EASY = new HeatMissed.Least(0.001, 1, 0, 1, 0);

  private static BathLook at(double lookS, double slope, double bendK) {
    return new BathLook(lookS, 40, slope, EASY, bendK, 0);
  }

  private static Blocks line(double fromC, double perS) {
    Blocks blocks = Blocks.START;
    for (int i = 0; i < 12; i++) {
      blocks = blocks.next(fromC + perS * (5 * i + 2.5), 5);
    }
    return blocks;
  }

  @Test
  void itBeginsWhereTheCourseEnds() {
    BathLook look = BathLook.begin(line(40, -0.01), 12, EASY);
    assertEquals(39.4, look.fromC(), 1e-9);
    assertEquals(-0.01, look.slope(), 1e-12);
    assertEquals(0, look.lookS());
    assertEquals(0, look.bendK());
  }

  /** A bath 1 K colder at 40 °C saves 2.5 W/K and what evaporates less. */
  @Test
  void aColderBathLosesLessAndBendsItsCourse() {
    BathLook next = at(10, 0, 0.1).next(38, TRAY, ROOM);
    assertEquals(15, next.lookS());
    double savedW = TRAY.bathLossW(38.5, ROOM) - TRAY.bathLossW(37.5, ROOM);
    assertEquals(0.1 + savedW / 4180 * 2 * 5, next.bendK(), 1e-9);
    double twoLitres =
        at(10, 0, 0).next(38, new TrayModel(2, 0.072, 1100, 18, 2.5, 0.5, 250, 1), ROOM).bendK();
    assertEquals(savedW / 8360 * 10, twoLitres, 1e-9);
  }

  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void aBathThatFallsShortOfItsCourseMissesTheHeat() {
    assertEquals(BathLook.Answer.MISSED, at(45, -0.01, 0).answer(40 - 0.4 - 0.1501));
    assertEquals(BathLook.Answer.OPEN, at(45, -0.01, 0).answer(40 - 0.4 - 0.1499));
    assertEquals(BathLook.Answer.OPEN, at(9.9, 0, 0).answer(20), "two blocks at least");
    assertEquals(BathLook.Answer.MISSED, at(10, 0, 0).answer(20));
  }

  @Test
  void aFallThatHalvesByItselfTeachesNothing() {
    assertEquals(BathLook.Answer.UNCLEAR, at(105, -0.01, 0).answer(39.6001));
    assertEquals(BathLook.Answer.OPEN, at(105, -0.01, 0).answer(39.5999));
    assertEquals(BathLook.Answer.UNCLEAR, at(105, 0, 0).answer(40.1001), "a hot pour");
    BathLook weak = new BathLook(417, 40, 0, HeatMissed.Least.NONE, 0, 0);
    assertEquals(BathLook.Answer.OPEN, weak.answer(40));
    BathLook longer = new BathLook(417.1, 40, 0, HeatMissed.Least.NONE, 0, 0);
    assertEquals(BathLook.Answer.UNCLEAR, longer.answer(40));
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void whereTheWeakestTrayWouldHaveMissedItNothingArrived() {
    assertEquals(BathLook.Answer.OPEN, at(316.9, 0, 0).answer(40));
    assertEquals(BathLook.Answer.NOT_MISSED, at(317.1, 0, 0).answer(40));
    assertEquals(BathLook.Answer.OPEN, at(317.1, 0, 0.01).answer(40), "its course bends");
    assertEquals(BathLook.Answer.NOT_MISSED, at(317.1 + 50, 0, 0.1).answer(40));
    assertEquals(BathLook.Answer.NOT_MISSED, at(317.1, 0, -1).answer(40), "no credit for a rise");
  }

  /** At 0 °C and with round numbers the bounds themselves can be had exactly. */
  @Test
  void eachBoundItselfCounts() {
    HeatMissed.Least none = HeatMissed.Least.NONE;
    assertEquals(BathLook.Answer.MISSED, new BathLook(10, 0.15, 0, none, 0, 0).answer(0));
    assertEquals(BathLook.Answer.OPEN, new BathLook(10, 0, 0, none, 0, 0).answer(0.1));
    HeatMissed.Least sure = new HeatMissed.Least(0.3, 1, 0, 1, 0);
    assertEquals(BathLook.Answer.NOT_MISSED, new BathLook(18, 0, 0, sure, 0, 0).answer(0));
  }

  @Test
  void noLookIsBegunThatWouldNotEnd() {
    HeatMissed.Least just = new HeatMissed.Least(0.3001 / 320, 1, 0, 1, 0);
    HeatMissed.Least less = new HeatMissed.Least(0.2999 / 320, 1, 0, 1, 0);
    assertTrue(new BathLook(0, 40, 0, just, 0, 0).ends(TRAY, ROOM));
    assertTrue(new BathLook(0, 40, 0.01, just, 0, 0).ends(TRAY, ROOM));
    assertFalse(new BathLook(0, 40, 0, less, 0, 0).ends(TRAY, ROOM));
    assertFalse(new BathLook(0, 40, -0.001, just, 0, 0).ends(TRAY, ROOM), "a fall bends");
    double perK = TRAY.bathLossW(40.5, ROOM) - TRAY.bathLossW(39.5, ROOM);
    double bend = perK / 4180 * 0.005 * 320 * 320 / 2;
    HeatMissed.Least more = new HeatMissed.Least((0.3001 + bend / 2) / 320, 1, 0, 1, 0);
    assertTrue(new BathLook(0, 40, -0.005, more, 0, 0).ends(TRAY, ROOM));
    HeatMissed.Least few = new HeatMissed.Least((0.2999 + bend / 2) / 320, 1, 0, 1, 0);
    assertFalse(new BathLook(0, 40, -0.005, few, 0, 0).ends(TRAY, ROOM));
  }

  /** A welded contact goes on heating while heat is held off: a warm bath does not cool. */
  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aWarmBathThatDoesNotCoolInALookIsHeated() {
    BathLook look = new BathLook(317.1, 40, 0, EASY, 0, 0.2);
    assertEquals(BathLook.Answer.HEATED, look.answer(39.91));
    assertEquals(BathLook.Answer.HEATED, look.answer(40.05));
    assertEquals(BathLook.Answer.NOT_MISSED, look.answer(39.89), "it cools as it must");
    BathLook cool = new BathLook(317.1, 40, 0, EASY, 0, 0.199);
    assertEquals(BathLook.Answer.NOT_MISSED, cool.answer(40), "it need not have cooled");
    assertEquals(BathLook.Answer.OPEN, new BathLook(316.9, 40, 0, EASY, 0, 1).answer(40));
  }

  /** 1.5 W/K of 15 K over the warmest room for 5 s, in a litre and a quarter. */
  @Test
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void onlyABathFarOverAnyRoomMustCool() {
    BathLook look = at(0, 0, 0);
    assertEquals(1.5 * 15 * 5 / (4180 * 1.25), look.next(40, TRAY, ROOM).coolsK(), 1e-9);
    assertEquals(0, look.next(31.9, TRAY, ROOM).coolsK());
    assertEquals(0, look.next(32, TRAY, new RoomModel(30, 0.5, 0)).coolsK());
  }
}
