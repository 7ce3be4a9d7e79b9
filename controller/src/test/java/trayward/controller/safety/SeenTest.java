package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** Of two bath probes the higher one protects. */
class SeenTest {

  private static final Temperature NEVER = new Temperature(true, false, Double.NaN);

  @Test
  @Verifies(value = "SR-09", side = Side.WITHHOLDS)
  void theHigherOfTwoReadingsProtects() {
    assertEquals(41, Seen.higher(Conditions.read(40), Conditions.read(41)));
    assertEquals(41, Seen.higher(Conditions.read(41), Conditions.read(40)));
  }

  @Test
  void whereOneProbeNeverReadTheOtherCounts() {
    assertEquals(41, Seen.higher(NEVER, Conditions.read(41)));
    assertEquals(41, Seen.higher(Conditions.read(41), NEVER));
    assertEquals(40, Seen.higher(Conditions.read(40), Temperature.NOT_FITTED));
    assertEquals(Double.NaN, Seen.higher(NEVER, NEVER));
  }
}
