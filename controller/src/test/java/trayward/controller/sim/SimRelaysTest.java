package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Heat needs both contacts, and the safety contact needs its pulses (SR-11, SR-18). */
class SimRelaysTest {

  private static final double HEATER_W = 250;

  private final SimRelays relays = new SimRelays();

  @Test
  void atRestBothContactsAreOpen() {
    assertFalse(relays.heaterContact());
    assertFalse(relays.safetyContact(0));
    assertEquals(0, relays.heatW(HEATER_W, 0));
  }

  @Test
  void heatNeedsBothCoilsAndAPulse() {
    for (int bits = 0; bits < 8; bits++) {
      SimRelays fresh = new SimRelays();
      boolean heater = (bits & 1) != 0;
      boolean safety = (bits & 2) != 0;
      boolean pulse = (bits & 4) != 0;
      fresh.heaterCoil(heater);
      fresh.safetyCoil(safety);
      fresh.pulse(pulse, 0);
      double expected = heater && safety && pulse ? HEATER_W : 0;
      assertEquals(expected, fresh.heatW(HEATER_W, 0.5), "case " + bits);
    }
  }

  @Test
  void theSafetyContactDropsOneSecondAfterTheLastEdgeOfEitherKind() {
    relays.safetyCoil(true);
    relays.pulse(true, 5);
    assertTrue(relays.safetyContact(5));
    assertTrue(relays.safetyContact(5.999));
    assertFalse(relays.safetyContact(6));
    relays.pulse(false, 7);
    assertTrue(relays.safetyContact(7.999));
    assertFalse(relays.safetyContact(8));
  }

  @Test
  void aLineThatHoldsItsLevelIsNoPulseHoweverOftenItIsWritten() {
    relays.safetyCoil(true);
    for (int i = 0; i < 30; i++) {
      relays.pulse(true, i * 0.1);
    }
    assertTrue(relays.pulse());
    assertFalse(relays.safetyContact(3));
  }

  @Test
  void pulsesHoldTheSafetyContactForAsLongAsTheyCome() {
    relays.safetyCoil(true);
    relays.heaterCoil(true);
    for (int i = 0; i < 1000; i++) {
      relays.pulse(i % 2 == 0, i * 0.1);
      assertEquals(HEATER_W, relays.heatW(HEATER_W, i * 0.1));
    }
  }

  @Test
  void aWeldedHeaterContactHeatsWhileTheSafetyContactLetsIt() {
    relays.heaterWelded(true);
    relays.safetyCoil(true);
    relays.pulse(true, 0);
    assertTrue(relays.heaterContact());
    assertEquals(HEATER_W, relays.heatW(HEATER_W, 0.5));
    relays.safetyCoil(false);
    assertEquals(0, relays.heatW(HEATER_W, 0.5));
    relays.heaterWelded(false);
    assertFalse(relays.heaterContact());
  }

  @Test
  void aWeldedSafetyContactNeedsNeitherCoilNorPulseAndLeavesTheOtherInCharge() {
    relays.safetyWelded(true);
    assertTrue(relays.safetyContact(1000));
    assertEquals(0, relays.heatW(HEATER_W, 1000));
    relays.heaterCoil(true);
    assertEquals(HEATER_W, relays.heatW(HEATER_W, 1000));
    relays.safetyWelded(false);
    assertEquals(0, relays.heatW(HEATER_W, 1000));
  }

  @Test
  void bothContactsWeldedHeatWithoutAnyCommand() {
    relays.heaterWelded(true);
    relays.safetyWelded(true);
    assertEquals(HEATER_W, relays.heatW(HEATER_W, 0));
  }

  @Test
  void anOpenHeaterTakesNoPowerThroughClosedContacts() {
    relays.heaterWelded(true);
    relays.safetyWelded(true);
    relays.open(true);
    assertTrue(relays.heaterContact());
    assertEquals(0, relays.heatW(HEATER_W, 0));
    relays.open(false);
    assertEquals(HEATER_W, relays.heatW(HEATER_W, 0));
  }

  @Test
  void losingPowerDropsBothCoilsAndTheyStayDownUntilDrivenAgain() {
    relays.heaterCoil(true);
    relays.safetyCoil(true);
    relays.pulse(true, 0);
    relays.unpowered();
    assertFalse(relays.heaterContact());
    assertFalse(relays.safetyContact(0.1));
    relays.safetyCoil(true);
    assertFalse(relays.safetyContact(0.1));
  }

  @Test
  void operationsCountChangesOfTheHeaterCoilOnly() {
    relays.heaterCoil(true);
    relays.heaterCoil(true);
    relays.heaterCoil(false);
    relays.safetyCoil(true);
    relays.pulse(true, 0);
    relays.heaterCoil(true);
    assertEquals(3, relays.operations());
    relays.unpowered();
    assertEquals(4, relays.operations());
  }
}
