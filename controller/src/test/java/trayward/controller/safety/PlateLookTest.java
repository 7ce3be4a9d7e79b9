package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** What a plate does with heat held off names why it was too hot. */
class PlateLookTest {

  /** Coupling over plate capacity of the reference tray (reference-tray.md): 18 / 1100 1/s. */
  private static final double COOLING = 18.0 / 1100;

  private static final ConstantSpan LIVE = ConstantSpan.START;

  /** Looks at a plate that moves by {@code kelvinPerS} from 50 °C over a bath of 40 °C. */
  private static @Nullable TripCause look(double kelvinPerS, int seconds, boolean bathFalls) {
    HeatLag off = HeatLag.START;
    PlateLook look = PlateLook.begin(off.next(true, 0.1), COOLING, bathFalls);
    double plate = 50;
    for (int i = 0; i < 10 * seconds; i++) {
      plate += 0.1 * kelvinPerS;
      look = look.next(off, plate, 0.1);
    }
    return look.cause(plate, 40, LIVE, LIVE);
  }

  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aPlateThatRisesWithHeatOffIsHeatedThroughAStuckRelay() {
    assertEquals(TripCause.RELAY_STUCK, look(0.1, 17, false));
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aPlateThatCreepsDownFarSlowerThanAWetOneIsDry() {
    assertEquals(TripCause.TRAY_DRY, look(-0.015, 17, false));
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatCoolsAsAWetOneHasABathProbeThatLies() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look(-0.15, 17, false));
  }

  @Test
  void aPlateThatStandsStillIsLookedAtLongerAndThenItsCreepDecides() {
    assertNull(look(0.005, 17, false));
    assertEquals(TripCause.RELAY_STUCK, look(0.005, 60, false));
    assertEquals(TripCause.TRAY_DRY, look(0, 60, false));
  }

  @Test
  void aBathReadingThatFellFasterThanAnyBathIsAProbeOutOfTheLiquid() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look(-0.03, 17, true));
  }

  @Test
  void nothingIsNamedBeforeTheLookIsOver() {
    assertNull(look(0.1, 10, false));
  }
}
