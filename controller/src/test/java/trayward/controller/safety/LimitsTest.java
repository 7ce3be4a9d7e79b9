package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** Limits in force, and those that lean on each other. */
class LimitsTest {

  private static Limits of(Limit limit, double value) {
    return Limits.STANDARD.with(limit, value);
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aValueOutsideOfItsRangeIsRefused() {
    String refused =
        assertThrows(
                IllegalArgumentException.class, () -> new Limits(Map.of(Limit.BATH_HARD_C, 55.1)))
            .getMessage();
    assertEquals("bath_hard_c must be 30 to 55 °C, not 55.1", refused);
  }

  @Test
  void minutesAndSecondsAreWholeMilliseconds() {
    assertEquals(500, Limits.STANDARD.ms(Limit.READ_BACK_S));
    double minutes = Limits.STANDARD.get(Limit.PRESENCE_MIN);
    assertEquals(Math.round(minutes * 60_000), Limits.STANDARD.ms(Limit.PRESENCE_MIN));
  }

  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void theSetTemperatureStaysTwoKelvinUnderTheHardLimit() {
    assertEquals(50, Limits.STANDARD.setRange().max());
    assertEquals(15, Limits.STANDARD.setRange().min());
    assertEquals(38, of(Limit.BATH_HARD_C, 40).setRange().max());
    assertEquals(45, of(Limit.SET_MAX_C, 45).setRange().max());
  }

  @Test
  void limitsThatLeaveASingleSetTemperatureAreUsable() {
    assertTrue(Limits.STANDARD.settable());
    Limits single = of(Limit.SET_MIN_C, 30).with(Limit.BATH_HARD_C, 32);
    assertTrue(single.settable());
    assertFalse(single.with(Limit.BATH_HARD_C, 31.9).settable());
    assertFalse(of(Limit.SET_MIN_C, 30).with(Limit.SET_MAX_C, 29.9).settable());
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void theRegulatorsCeilingStaysFourKelvinUnderTheLowerTrip() {
    assertEquals(68, Limits.STANDARD.plateCeilingC());
    assertEquals(56, of(Limit.PLATE_DRY_C, 60).plateCeilingC());
    assertEquals(50, of(Limit.PLATE_ASK_C, 50).plateCeilingC());
  }
}
