package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.HeatTrail.Block;

/** Blocks of a warm-up, and the stretch of them that may weigh the liquid. */
class HeatTrailTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;
  private static final RoomModel ROOM = RoomModel.REFERENCE;

  private static ThermalInput input(double dt, boolean heat, double bathC, double plateC) {
    return new ThermalInput(
        dt,
        heat,
        State.HEATING,
        new ThermalInput.Sample(bathC, 1),
        new ThermalInput.Sample(plateC, 1));
  }

  private static HeatTrail next(HeatTrail trail, double dt, double bathC, double plateC) {
    return trail.next(input(dt, true, bathC, plateC), TRAY, ROOM);
  }

  @Test
  void thePlateIsGivenFiftySecondsToFollowAndThreeMinutesWhereNoneIsSeen() {
    HeatTrail early = next(HeatTrail.START, 49.5, 30, 40);
    assertEquals(new HeatTrail(49.5, Block.EMPTY, List.of()), early);
    assertEquals(0.5, next(early, 0.5, 30, 40).open().timeS(), 0, "it counts from here");
    assertEquals(50, next(early, 0.5, 30, 40).onS());
    HeatTrail blind = next(HeatTrail.START, 179.5, 30, Double.NaN);
    assertEquals(new HeatTrail(179.5, Block.EMPTY, List.of()), blind);
    assertEquals(0.5, next(blind, 0.5, 30, Double.NaN).open().timeS());
  }

  @Test
  void aPauseOrAnUnknownBathBeginsItAnew() {
    HeatTrail warm = next(HeatTrail.START, 60, 30, 40);
    assertSame(HeatTrail.START, warm.next(input(1, false, 30, 40), TRAY, ROOM));
    assertSame(HeatTrail.START, next(warm, 1, Double.NaN, 40));
  }

  /** 2.5 W/K of the bath and 0.5 W/K of the plate over a room of 20 °C. */
  @Test
  void aBlockSumsReadingsAndBelievedLosses() {
    HeatTrail open = next(next(new HeatTrail(60, Block.EMPTY, List.of()), 4, 30, 40), 5, 32, 44);
    Block sums = open.open();
    assertEquals(69, open.onS());
    assertEquals(9, sums.timeS());
    assertEquals(4 * 30 + 5 * 32, sums.bathKs(), 1e-9);
    assertEquals(4 * 40 + 5 * 44, sums.plateKs(), 1e-9);
    assertEquals(4 * (25 + 10) + 5 * (30 + 12), sums.dryJ(), 1e-9);
    double vapourJ = 4 * TRAY.evaporationW(30, ROOM) + 5 * TRAY.evaporationW(32, ROOM);
    assertEquals(vapourJ, sums.evaporationJ(), 1e-9);
    assertEquals(280.0 / 9, sums.bathC(), 1e-12);
    assertEquals(380.0 / 9, sums.plateC(), 1e-12);
    Block blind = next(new HeatTrail(200, Block.EMPTY, List.of()), 4, 30, Double.NaN).open();
    assertEquals(4 * (25 + 5), blind.dryJ(), 1e-9, "an unseen plate loses as if at its bath");
    assertEquals(Double.NaN, blind.plateC());
  }

  @Test
  void aBlockIsFullAfterTenSecondsAndTheNewestSixtyFourAreKept() {
    HeatTrail open = next(new HeatTrail(60, Block.EMPTY, List.of()), 9.5, 30, 40);
    assertEquals(0, open.blocks().size());
    HeatTrail full = next(open, 0.5, 30, 40);
    assertEquals(1, full.blocks().size());
    assertEquals(10, full.blocks().get(0).timeS());
    assertEquals(Block.EMPTY, full.open());
    assertEquals(70, full.onS());
    for (int i = 1; i < 64; i++) {
      full = next(full, 10, 30 + i, 40);
    }
    assertEquals(64, full.blocks().size());
    assertEquals(30, full.blocks().get(0).bathC());
    HeatTrail more = next(full, 10, 94, 40);
    assertEquals(64, more.blocks().size());
    assertEquals(31, more.blocks().get(0).bathC());
    assertEquals(94, more.blocks().get(63).bathC());
  }

  private static HeatTrail blocks(int n, IntToDoubleFunction bathC, IntToDoubleFunction plateC) {
    List<Block> all = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      all.add(
          new Block(
              10,
              10 * bathC.applyAsDouble(i),
              10 * plateC.applyAsDouble(i),
              100 + 10 * i,
              50 + 4 * i));
    }
    return new HeatTrail(1000, Block.EMPTY, all);
  }

  private static @Nullable HeatStretch of(
      int n, IntToDoubleFunction bathC, IntToDoubleFunction plateC) {
    return blocks(n, bathC, plateC).stretch(TRAY);
  }

  /**
   * From the middle of the first block to that of the last of seven: six blocks of 10 s at 250 W.
   */
  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void sevenBlocksThatRiseByThreeKelvinAreAStretch() {
    HeatStretch seven = of(7, i -> 30 + 0.5 * i, i -> 40 + 0.625 * i);
    assertNotNull(seven);
    assertEquals(250 * 60, seven.heatJ(), 1e-9);
    assertEquals(100.0 / 2 + 110 + 120 + 130 + 140 + 150 + 160.0 / 2, seven.dryJ(), 1e-9);
    assertEquals(50.0 / 2 + 54 + 58 + 62 + 66 + 70 + 74.0 / 2, seven.evaporationJ(), 1e-9);
    assertEquals(1100 * 3.75, seven.plateJ(), 1e-9);
    assertEquals(3, seven.bathK(), 1e-12);
    assertNull(of(6, i -> 30 + i, i -> 40 + i), "under two minutes with the settling before it");
    assertNull(of(7, i -> 30 + 0.499 * i, i -> 40 + 0.499 * i), "under twenty times the doubt");
  }

  @Test
  void aSlowRiseIsLookedAtOverMoreBlocksButNoMoreThanItNeeds() {
    HeatStretch slow = of(30, i -> 30 + 0.25 * i, i -> 40 + 0.25 * i);
    assertNotNull(slow);
    assertEquals(3, slow.bathK(), 1e-12);
    assertEquals(250 * 120, slow.heatJ(), 1e-9);
    HeatStretch all = of(13, i -> 30 + 0.25 * i, i -> 40 + 0.25 * i);
    assertNotNull(all);
    assertEquals(250 * 120, all.heatJ(), 1e-9);
    HeatStretch quick = of(30, i -> 30 + i, i -> 40 + i);
    assertNotNull(quick);
    assertEquals(6, quick.bathK(), 1e-12);
  }

  @Test
  void itEndsWithAFullBlockOnly() {
    HeatTrail full = blocks(7, i -> 30 + i, i -> 40 + i);
    assertNull(next(full, 0.5, 37, 47).stretch(TRAY));
  }

  @Test
  void whereNoPlateIsSeenItIsTakenToRiseWithItsBath() {
    HeatStretch blind = of(7, i -> 30 + i, i -> Double.NaN);
    assertNotNull(blind);
    assertEquals(1100 * 6, blind.plateJ(), 1e-9);
  }

  /** 0.3 of a rise of 6 K: a plate that rises by 1.8 K more or less does not follow. */
  @Test
  void aPlateThatDoesNotFollowItsBathIsNoBalance() {
    assertNotNull(of(7, i -> 30 + i, i -> 40 + 1.29 * i));
    assertNull(of(7, i -> 30 + i, i -> 40 + 1.31 * i));
    assertNotNull(of(7, i -> 30 + i, i -> 40 + 0.71 * i));
    assertNull(of(7, i -> 30 + i, i -> 40 + 0.69 * i));
    IntToDoubleFunction ten = i -> i == 6 ? 40 : 30 + 10 * i / 6.0;
    assertNotNull(of(7, ten, i -> i == 6 ? 53 : 40), "the bound itself follows");
  }

  /** 0.08 of a rise of 8 K, and 0.12 K: 0.76 K off the line between the ends bend a course. */
  @Test
  void aPourBendsTheCourse() {
    for (int at : new int[] {1, 3, 5}) {
      for (int side : new int[] {-1, 1}) {
        assertNotNull(bent(at, side * 0.75), at + " by " + side);
        assertNull(bent(at, side * 0.77), at + " by " + side);
      }
    }
    IntToDoubleFunction twelve = i -> i == 3 ? 1.08 : 2.0 * i - 6; // through 0 in its middle
    assertNotNull(of(7, twelve, i -> 40 + 2.0 * i), "the bound itself is straight");
  }

  /** A rise of 8 K over the last seven of nine blocks, one of which is off by {@code byK}. */
  private static @Nullable HeatStretch bent(int at, double byK) {
    double perBlock = 8.0 / 6;
    return of(
        9, i -> 30 + perBlock * (i - 2) + (i - 2 == at ? byK : 0), i -> 40 + perBlock * (i - 2));
  }

  /** Six blocks at 250 W are 15 kJ: losses above 6 kJ hide the liquid. */
  @Test
  void lossesThatWouldHideTheLiquidAreNoBalance() {
    assertNotNull(lossy(600, 400));
    assertNull(lossy(600, 400.1));
    assertNull(lossy(1000.1, 0));
  }

  private static @Nullable HeatStretch lossy(double dryJ, double evaporationJ) {
    List<Block> all = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      all.add(new Block(10, 10 * (30 + i), 10 * (40 + i), dryJ, evaporationJ));
    }
    return new HeatTrail(1000, Block.EMPTY, all).stretch(TRAY);
  }
}
