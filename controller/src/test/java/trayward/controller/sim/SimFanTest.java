package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Rated 1500 1/min and 150 m³/h, 3 s up and 4 s down, as the reference parameters say. */
class SimFanTest {

  private static final double STEP_S = 0.1;

  private final SimFan fan = new SimFan(PlantParameters.REFERENCE);

  @Test
  void atRestNothingTurnsAndNothingMoves() {
    run(10, false);
    assertEquals(0, fan.readRpm());
    assertEquals(0, fan.flowM3PerH());
    assertFalse(fan.airflow());
  }

  @Test
  void itReachesNinetyEightPercentInItsSpinUpTime() {
    run(3, true);
    assertEquals(1500 * (1 - Math.exp(-4)), fan.readRpm(), 1e-6);
    assertTrue(fan.readRpm() > 0.98 * 1500);
    run(27, true);
    assertEquals(1500, fan.readRpm(), 1e-3);
    assertEquals(150, fan.flowM3PerH(), 1e-3);
  }

  @Test
  void itFallsToTwoPercentInItsSpinDownTime() {
    run(60, true);
    run(4, false);
    assertEquals(1500 * Math.exp(-4), fan.readRpm(), 1e-6);
    assertTrue(fan.readRpm() < 0.02 * 1500);
  }

  @Test
  void theStepDoesNotChangeTheSpinUp() {
    SimFan coarse = new SimFan(PlantParameters.REFERENCE);
    coarse.advance(2, true);
    run(2, true);
    assertEquals(coarse.readRpm(), fan.readRpm(), 1e-9);
  }

  @Test
  void theSwitchClosesAboveHalfTheRatedFlowAndOpensBelow() {
    boolean was = false;
    for (int i = 0; i < 60; i++) {
      fan.advance(STEP_S, i < 30);
      assertEquals(fan.flowM3PerH() > 75, fan.airflow(), "step " + i);
      was |= fan.airflow();
    }
    assertTrue(was);
    assertFalse(fan.airflow());
  }

  @Test
  void aDeadFanRunsDownAlthoughCommandedAndRunsAgainWhenMended() {
    run(60, true);
    fan.dead(true);
    run(4, true);
    assertEquals(1500 * Math.exp(-4), fan.readRpm(), 1e-3);
    assertFalse(fan.airflow());
    fan.dead(false);
    run(10, true);
    assertTrue(fan.airflow());
  }

  @Test
  void aSlowFanTurnsAsSlowlyAsToldAndMovesLessAir() {
    run(60, true);
    fan.slow(900);
    run(60, true);
    assertEquals(900, fan.readRpm(), 1e-3);
    assertEquals(90, fan.flowM3PerH(), 1e-3);
    assertTrue(fan.airflow());
    fan.slow(700);
    run(60, true);
    assertFalse(fan.airflow());
    fan.slow(Double.NaN);
    run(60, true);
    assertEquals(1500, fan.readRpm(), 1e-3);
  }

  @Test
  void aFanIsNotSlowedToMoreThanItsRating() {
    fan.slow(9000);
    run(60, true);
    assertEquals(1500, fan.readRpm(), 1e-3);
  }

  @Test
  void aBlockedDuctStopsTheAirAndNotTheWheel() {
    run(60, true);
    fan.ductBlocked(true);
    assertEquals(0, fan.flowM3PerH());
    assertFalse(fan.airflow());
    assertEquals(1500, fan.readRpm(), 1e-3);
    fan.ductBlocked(false);
    assertEquals(150, fan.flowM3PerH(), 1e-3);
  }

  @Test
  void aSwitchStuckOnSaysAirWhereThereIsNone() {
    fan.airflowStuckOn(true);
    assertTrue(fan.airflow());
    assertEquals(0, fan.flowM3PerH());
    fan.airflowStuckOn(false);
    assertFalse(fan.airflow());
  }

  @Test
  void aSwitchStuckOffSaysNoneWhereThereIsAir() {
    run(60, true);
    fan.airflowStuckOff(true);
    assertFalse(fan.airflow());
    assertEquals(150, fan.flowM3PerH(), 1e-3);
    fan.airflowStuckOff(false);
    assertTrue(fan.airflow());
  }

  @Test
  void aTachometerStuckKeepsSayingWhatItSaid() {
    run(60, true);
    fan.tachometerStuck(true);
    run(60, false);
    assertEquals(1500, fan.readRpm(), 1e-3);
    assertEquals(0, fan.flowM3PerH(), 1e-3);
    fan.tachometerStuck(false);
    assertEquals(0, fan.readRpm(), 1e-3);
  }

  private void run(double seconds, boolean commanded) {
    for (long i = Math.round(seconds / STEP_S); i > 0; i--) {
      fan.advance(STEP_S, commanded);
    }
  }
}
