package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** A plate over its bath that grows hotter with heat off, without any model. */
class OffRiseTest {

  private static boolean found(double plateFrom, double perS, double bath, State state) {
    HeatLag heat = HeatLag.START.next(true, 0.1);
    ReadingTrail plate = ReadingTrail.START;
    ReadingTrail baths = ReadingTrail.START;
    OffRise rise = OffRise.START;
    boolean found = false;
    for (int s = 0; s < 40; s++) {
      heat = heat.next(false, 1);
      plate = plate.next(new ThermalInput.Sample(plateFrom + perS * s, s * 1_000_000_000L));
      baths = baths.next(new ThermalInput.Sample(bath, s * 1_000_000_000L));
      rise = rise.next(heat, plate, baths);
      found |= rise.found(plate.median(), state);
    }
    return found;
  }

  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aPlateOverItsBathThatRisesWithHeatOffIsFound() {
    assertEquals(true, found(50, 0.1, 40, State.READY));
    assertEquals(true, found(50, 0.2, 40, State.LOCKOUT));
  }

  @Test
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void aPlateThatCoolsOrIsWarmedByItsBathOrRestsIsNot() {
    assertEquals(false, found(50, -0.1, 40, State.READY));
    assertEquals(false, found(25, 0.3, 50, State.READY), "a hot pour warms the plate");
    assertEquals(false, found(50, 0.1, 40, State.OFF), "the tray is being filled");
  }
}
