package trayward.host.app.campaign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.app.campaign.Told.act;
import static trayward.host.app.campaign.Told.fault;
import static trayward.host.app.campaign.Told.session;

import java.util.List;
import org.junit.jupiter.api.Test;
import trayward.controller.event.TripCause;

/** What is wrong is found, and what is right is left alone. */
class OracleTest {

  private static final List<FaultPlan> NONE = List.of();

  @Test
  void aRunAsItShouldBeIsHeldAgainstNobody() {
    Told told = session(true, NONE, act(200, "stop")).until(80, "PURGING", 0);
    assertEquals(List.of(), told.until(200.5, "HOLDING", 250).until(300, "AFTER_RUN", 0).hazards());
  }

  @Test
  void heatInStillAirIsFoundAfterASecondAndNotBefore() {
    Told told = session(true, NONE).until(100, "HOLDING", 250).flow(0.49);
    assertEquals(List.of(), told.until(101.1, "HOLDING", 250).hazards());
    assertEquals(List.of(Hazard.STILL_AIR), told.until(101.3, "HOLDING", 250).hazards());
  }

  @Test
  void heatThatComesBackInStillAirIsFoundHoweverShort() {
    Told told = session(true, NONE).until(100, "HOLDING", 250).flow(0).until(110, "READY", 0);
    assertEquals(List.of(Hazard.STILL_AIR), told.until(110.1, "HOLDING", 250).hazards());
  }

  @Test
  void aPlateOf79IsFoundAndOneOf78IsNot() {
    assertEquals(List.of(), session(true, NONE).plate(78).until(9, "HOLDING", 0).hazards());
    Told hot = session(true, NONE).plate(79).until(9, "HOLDING", 0);
    assertEquals(List.of(Hazard.PLATE_HOT), hot.hazards());
  }

  @Test
  void aPlateNobodySeesIsReportedApart() {
    Outcome outcome = session(false, NONE).plate(90).until(9, "HOLDING", 0).outcome();
    assertEquals(List.of(), outcome.violations());
    assertEquals(Hazard.PLATE_HOT, outcome.apart().get(0).hazard());
    assertEquals(90, outcome.plateC());
  }

  @Test
  void aBathAbove56IsFound() {
    assertEquals(List.of(), session(true, NONE).bath(56).until(9, "HOLDING", 0).hazards());
    Told hot = session(true, NONE).bath(56.1).until(9, "HOLDING", 0);
    assertEquals(List.of(Hazard.BATH_HOT), hot.hazards());
  }

  @Test
  void heatAfterAStopIsFoundAfterASecond() {
    Told told = session(true, NONE, act(100, "stop")).until(101, "HOLDING", 250);
    assertEquals(List.of(), told.hazards());
    assertEquals(List.of(Hazard.AFTER_STOP), told.until(101.2, "HOLDING", 250).hazards());
  }

  @Test
  void aHeaterThatComesBackByItselfAfterATripIsFound() {
    Told told = session(true, List.of(fault(FaultKind.FAN_STOPS, 100, 0)));
    told.until(101, "HOLDING", 250).trips(TripCause.AIR_LOST).until(200, "LOCKOUT", 0);
    assertEquals(List.of(), told.hazards());
    told.unlatched().until(201, "HOLDING", 250);
    assertEquals(List.of(Hazard.BY_ITSELF), told.hazards());
  }

  @Test
  void afterATripHeatNeedsAcknowledgementResetAndStart() {
    List<FaultPlan> fan = List.of(fault(FaultKind.FAN_STOPS, 100, 0));
    for (List<String> words :
        List.of(
            List.of("acknowledge", "reset", "start"),
            List.of("reset", "acknowledge", "start"),
            List.of("acknowledge", "start", "reset"))) {
      Told told =
          session(
              true, fan, act(150, words.get(0)), act(151, words.get(1)), act(152, words.get(2)));
      told.until(101, "HOLDING", 250).trips(TripCause.AIR_LOST).until(160, "LOCKOUT", 0);
      told.unlatched().until(240, "PURGING", 0).until(260, "HOLDING", 250);
      boolean right = words.equals(List.of("acknowledge", "reset", "start"));
      assertEquals(right ? List.of() : List.of(Hazard.BY_ITSELF), told.hazards(), words.toString());
    }
  }

  @Test
  void heatAfterAPowerLossNeedsANewStart() {
    List<FaultPlan> loss = List.of(new FaultPlan(FaultKind.POWER_LOSS, 100, 105, 0, false));
    Told byItself = session(true, loss).until(100, "HOLDING", 250).until(105, "NO_POWER", 0);
    assertEquals(List.of(Hazard.BY_ITSELF), byItself.until(190, "HOLDING", 250).hazards());
    Told early = session(true, loss, act(103, "start")).until(100, "HOLDING", 250);
    early.until(105, "NO_POWER", 0);
    assertEquals(List.of(Hazard.BY_ITSELF), early.until(190, "HOLDING", 250).hazards());
    Told started = session(true, loss, act(110, "start")).until(100, "HOLDING", 250);
    started.until(190, "NO_POWER", 0);
    assertEquals(List.of(), started.until(200, "HOLDING", 250).hazards());
  }

  @Test
  void heatInAStateThatNeverHeatsAndUnderAStalledProgramIsFound() {
    Told proving = session(true, NONE).until(5, "PROVING", 250);
    assertEquals(List.of(Hazard.WRONG_STATE), proving.hazards());
    Told stalled = session(true, NONE).until(80, "HOLDING", 250).until(82, "STALLED", 250);
    assertEquals(List.of(), stalled.hazards());
    assertEquals(List.of(Hazard.FROZEN_PROGRAM), stalled.until(82.3, "STALLED", 250).hazards());
  }

  @Test
  void aFalseNameIsFoundAndATrueOneIsNot() {
    List<FaultPlan> fan = List.of(fault(FaultKind.FAN_STOPS, 100, 0));
    Told told = session(true, fan).until(100, "HOLDING", 0).trips(TripCause.RELAY_STUCK);
    assertEquals(List.of(Hazard.MISNAMED), told.hazards());
    assertTrue(told.outcome().faults().get(0).misnamed());
    Told right = session(true, fan).until(100.4, "HOLDING", 0).trips(TripCause.AIR_LOST);
    assertEquals(List.of(), right.hazards());
    assertEquals(0.5, right.outcome().faults().get(0).detectS(), 1e-9);
  }

  @Test
  void aFaultExplainsNothingBeforeItBegins() {
    List<FaultPlan> fan = List.of(fault(FaultKind.FAN_STOPS, 100, 0));
    Told told = session(true, fan).until(50, "HOLDING", 0).trips(TripCause.AIR_LOST);
    assertEquals(List.of(Hazard.MISNAMED), told.hazards());
  }

  @Test
  void aBathTrulyTooHotExplainsItsNameWhateverIsBroken() {
    List<FaultPlan> low = List.of(fault(FaultKind.TRAY_HALF_EMPTY, 50, 0));
    Told hot = session(true, low).bath(45.1).until(60, "HOLDING", 0);
    assertEquals(List.of(), hot.trips(TripCause.BATH_TOO_HOT).hazards());
    Told not = session(true, low).bath(43).until(60, "HOLDING", 0);
    assertEquals(List.of(Hazard.MISNAMED), not.trips(TripCause.BATH_TOO_HOT).hazards());
  }

  @Test
  void anyTripOfAHealthySessionIsHeldAgainstIt() {
    Told told = session(true, NONE).until(60, "HOLDING", 0).trips(TripCause.AIR_LOST);
    assertEquals(List.of(Hazard.HEALTHY_TRIP), told.hazards());
  }

  @Test
  void whatMatteredLongAndTrippedNothingIsMissed() {
    List<FaultPlan> open = List.of(fault(FaultKind.HEATER_OPEN, 100, 0));
    Told told = session(true, open).until(200, "HOLDING", 0);
    assertTrue(!told.outcome().faults().get(0).missed());
    assertTrue(told.until(400, "HOLDING", 0).outcome().faults().get(0).missed());
  }

  @Test
  void bothContactsWeldedIsForIndependentHardware() {
    List<FaultPlan> both =
        List.of(fault(FaultKind.RELAY_WELDED, 50, 0), fault(FaultKind.SAFETY_RELAY_WELDED, 60, 0));
    Told told = session(true, both, act(70, "stop")).until(90, "AFTER_RUN", 250).bath(70);
    Outcome outcome = told.until(95, "LOCKOUT", 250).outcome();
    assertEquals(List.of(), outcome.violations());
    assertEquals(3, outcome.apart().size());
    Told one = session(true, both.subList(0, 1), act(70, "stop")).until(90, "AFTER_RUN", 250);
    assertEquals(List.of(Hazard.AFTER_STOP, Hazard.WRONG_STATE), one.hazards());
  }

  private static FaultPlan open(double endS) {
    return new FaultPlan(FaultKind.HEATER_OPEN, 100, endS, 0, false);
  }

  /** While heat is held off to look, nothing can show that a heater was mended. */
  @Test
  void aHeaterMendedUnseenExplainsItsNameUntilHeatWasAskedForAgain() {
    Told held = session(true, List.of(open(150))).until(140, "HOLDING", 0).until(500, "READY", 0);
    assertEquals(List.of(), held.trips(TripCause.HEAT_NOT_ARRIVING).hazards());
    Told heated = session(true, List.of(open(150))).until(140, "HOLDING", 0).until(300, "READY", 0);
    heated.until(421, "HOLDING", 250);
    assertEquals(List.of(Hazard.MISNAMED), heated.trips(TripCause.HEAT_NOT_ARRIVING).hazards());
    Told soon = session(true, List.of(open(150))).until(140, "HOLDING", 0).until(300, "READY", 0);
    soon.until(419, "HOLDING", 250);
    assertEquals(List.of(), soon.trips(TripCause.HEAT_NOT_ARRIVING).hazards());
  }

  @Test
  void aMendedProbeShowsByItselfAndExplainsNothingTwoMinutesLater() {
    List<FaultPlan> absent = List.of(new FaultPlan(FaultKind.PROBE_ABSENT, 100, 150, 0, false));
    Told told = session(true, absent).until(140, "READY", 0).until(271, "READY", 0);
    assertEquals(List.of(Hazard.MISNAMED), told.trips(TripCause.BATH_PROBE_BAD).hazards());
  }

  /** One bath probe and no other: frozen, or live in a bath at rest that gets no heat. */
  @Test
  void aNameThatNoSensorCouldTellIsReportedApart() {
    List<FaultPlan> frozen = List.of(fault(FaultKind.PROBE_FROZEN, 100, 0));
    Told told = Told.alone(frozen).until(300, "HOLDING", 0).trips(TripCause.HEAT_NOT_ARRIVING);
    assertEquals(List.of(), told.hazards());
    assertEquals(Hazard.UNTOLD, told.outcome().apart().get(0).hazard());
    assertTrue(!told.outcome().faults().get(0).misnamed());
    List<FaultPlan> open = List.of(fault(FaultKind.BREAKER_TRIPPED, 100, 0));
    Told without = Told.alone(open).until(300, "HOLDING", 0).trips(TripCause.BATH_PROBE_BAD);
    assertEquals(List.of(), without.hazards());
  }

  @Test
  void whereEveryProbeIsFrozenStandingReadingsAreThoseOfATrayWithoutHeat() {
    FaultPlan bath = fault(FaultKind.PROBE_FROZEN, 100, 0);
    FaultPlan plate = fault(FaultKind.PLATE_FROZEN, 100, 0);
    FaultPlan second = fault(FaultKind.SECOND_FROZEN, 100, 0);
    TripCause heat = TripCause.HEAT_NOT_ARRIVING;
    Told all = session(true, List.of(bath, plate, second)).until(300, "HOLDING", 0).trips(heat);
    assertEquals(List.of(), all.hazards());
    assertEquals(Hazard.UNTOLD, all.outcome().apart().get(0).hazard());
    FaultPlan welded = fault(FaultKind.RELAY_WELDED, 100, 0);
    Told only = Told.alone(List.of(bath, welded)).until(90, "HOLDING", 0).bath(40.1);
    assertEquals(List.of(), only.until(300, "HOLDING", 0).trips(heat).hazards(), "the only one");
    Told two = session(true, List.of(bath, plate)).until(300, "HOLDING", 0).trips(heat);
    assertEquals(List.of(Hazard.MISNAMED), two.hazards(), "the second lives");
    Told other = session(true, List.of(bath, plate, second)).until(300, "HOLDING", 0);
    other.trips(TripCause.RELAY_STUCK);
    assertEquals(List.of(Hazard.MISNAMED), other.hazards(), "no such name");
  }

  @Test
  void aNameThatAnotherSensorOrTheBathItselfCouldTellIsFalse() {
    List<FaultPlan> frozen = List.of(fault(FaultKind.PROBE_FROZEN, 100, 0));
    List<FaultPlan> open = List.of(fault(FaultKind.BREAKER_TRIPPED, 100, 0));
    TripCause heat = TripCause.HEAT_NOT_ARRIVING;
    Told fitted = session(false, frozen).until(300, "HOLDING", 0).trips(heat);
    assertEquals(List.of(Hazard.MISNAMED), fitted.hazards(), "a second probe tells");
    Told moving = Told.alone(frozen).until(90, "HOLDING", 0).bath(40.1);
    moving.until(300, "HOLDING", 0).trips(heat);
    assertEquals(List.of(Hazard.MISNAMED), moving.hazards(), "its bath moved when it froze");
    Told later = Told.alone(frozen).until(300, "HOLDING", 0).trips(TripCause.RELAY_STUCK);
    assertEquals(List.of(Hazard.MISNAMED), later.hazards(), "no such name");
    Told cools = Told.alone(open).until(290, "HOLDING", 0).bath(39.9).until(300, "HOLDING", 0);
    assertEquals(
        List.of(Hazard.MISNAMED), cools.trips(TripCause.BATH_PROBE_BAD).hazards(), "it moves");
  }
}
