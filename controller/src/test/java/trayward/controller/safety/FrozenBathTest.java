package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** A reading that stands still, in a bath that rests or in one that does not. */
class FrozenBathTest {

  /** Ten minutes of one bath reading under a plate that moves by {@code kelvinPerS}. */
  private static boolean found(double kelvinPerS, double bathC) {
    FrozenBath frozen = FrozenBath.START;
    for (int i = 0; i < 6000; i++) {
      frozen =
          frozen.next(
              new ThermalInput(
                  0.1,
                  false,
                  State.HOLDING,
                  new ThermalInput.Sample(bathC, i),
                  new ThermalInput.Sample(45 + kelvinPerS * 0.1 * i, i)),
              0,
              TrayModel.REFERENCE);
    }
    return frozen.found(TrayModel.REFERENCE, RoomModel.REFERENCE, 11.16);
  }

  /** E4: stuck on from hold at 250 W the bath rises 5 K in 264 s, and its plate with it. */
  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aReadingThatStandsStillUnderARisingPlateIsFrozen() {
    assertEquals(true, found(5.0 / 264, 40));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aReadingThatStandsStillUnderASteadyOrCoolingPlateIsNot() {
    assertEquals(false, found(0, 40));
    assertEquals(false, found(-0.01, 40));
  }

  /** A reading that stands still in a heated bath without a plate probe, moved by hand or not. */
  private static FrozenBath poked(int seconds, double thenC) {
    FrozenBath frozen = FrozenBath.START;
    for (int i = 0; i < 10 * seconds; i++) {
      boolean heat = !frozen.pokes() && i % 50 < 20; // duty 0.4: the hold of the reference tray
      double celsius = i < 10 * seconds - 10 ? 40 : thenC;
      frozen =
          frozen.next(
              new ThermalInput(
                  0.1,
                  heat,
                  State.HOLDING,
                  new ThermalInput.Sample(celsius, i),
                  ThermalInput.Sample.NONE),
              0,
              TrayModel.REFERENCE);
    }
    return frozen;
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aReadingThatStandsStillThroughAPauseOfHeatIsFrozen() {
    assertEquals(true, poked(620, 40).pokes());
    assertEquals(false, poked(620, 40).pokedInVain(TrayModel.REFERENCE));
    assertEquals(true, poked(1100, 40).pokedInVain(TrayModel.REFERENCE));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aReadingThatMovesEndsThePauseAtOnce() {
    assertEquals(false, poked(590, 40).pokes());
    assertEquals(false, poked(620, 39.9375).pokes());
  }
}
