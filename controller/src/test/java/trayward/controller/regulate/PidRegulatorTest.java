package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.TimeOptimal;

class PidRegulatorTest {

  /** The highest plate temperature asked for and the one that trips (SR-07), °C. */
  private static final double CEILING_C = 68;

  private static final RoomModel ROOM = RoomModel.REFERENCE;
  private static final long SECOND = 1_000_000_000L;
  private static final double NO_PLATE = Double.NaN;

  /** SR-07: 400 W over a weak contact would bring the plate well above 75 °C. */
  @ParameterizedTest(name = "{0} L, {1} W/K")
  @CsvSource({"1, 12", "3, 12", "3, 8", "0.5, 12"})
  @Verifies(value = "SR-07", side = Verifies.Side.WITHHOLDS)
  void atFullDemandThePlateStaysUnderItsCeiling(double litres, double coupling) {
    PlantParameters tray = Loop.tray(litres, coupling, 400, 1);
    Loop loop = new Loop(tray, Loop.declared(tray), CEILING_C, 50).run(3600);
    assertTrue(loop.highestPlateC < 69, "plate " + loop.highestPlateC);
    assertTrue(loop.highestPlateC > 60, "the ceiling was never near: " + loop.highestPlateC);
  }

  @ParameterizedTest
  @CsvSource({"65, 1", "66.5, 0.5", "67.7, 0.1", "68, 0", "75, 0", "NaN, 1"})
  void theDutyFallsToNothingOverTheLastThreeKelvinUnderTheCeiling(double plateC, double duty) {
    PidRegulator regulator = fresh();
    assertEquals(duty, regulator.duty(at(0, 40, 20, plateC, true)), 1e-9);
    assertEquals(duty, fresh().duty(at(0, 40, 20, plateC, false)), 1e-9);
  }

  /** The bar is the physical bound: full heat, then coast. */
  @ParameterizedTest(name = "{0} L, {1} W/K, {2} W")
  @CsvSource({"1, 18, 250", "2, 18, 250", "1, 25, 250", "1, 12, 400"})
  void aTrayThatIsAsDeclaredArrivesNearTheBoundWithoutOvershoot(
      double litres, double coupling, double heaterW) {
    PlantParameters tray = Loop.tray(litres, coupling, heaterW, 1);
    OptionalDouble bound = TimeOptimal.secondsToBand(new Plant(tray), 40, 75, 0.2);
    Loop loop = new Loop(tray, Loop.declared(tray), CEILING_C, 40).run(5400);
    assertTrue(loop.highestBathC < 40.15, "peak " + loop.highestBathC);
    double ratio = loop.outsideUntilS / bound.orElseThrow();
    assertTrue(ratio < 1.35 && ratio >= 0.999, "ratio " + ratio);
  }

  /** The integral part must make up for what the declared tray does not know. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.5, 2})
  void evaporationUnlikeTheDeclaredIsMadeUpForWithinAnHour(double evaporation) {
    PlantParameters tray = Loop.tray(1, 18, 250, evaporation);
    Loop loop = new Loop(tray, TrayModel.REFERENCE, CEILING_C, 40).run(3600);
    assertEquals(40, loop.plant.bathC(), 0.1);
    assertTrue(loop.highestBathC < 40.5, "peak " + loop.highestBathC);
  }

  /** Far more heat is needed than declared: proportional action alone would leave it 2 K low. */
  @Test
  void aHeaterMuchWeakerThanDeclaredIsMadeUpForToo() {
    TrayModel declared = Loop.declared(Loop.tray(0.5, 18, 400, 0));
    Loop loop = new Loop(Loop.tray(0.5, 18, 120, 1), declared, CEILING_C, 40).run(7200);
    assertEquals(40, loop.plant.bathC(), 0.1);
  }

  /**
   * SIMC on F0's linearisation: 49.44 s fast, 6.25 s delay, 32 s asked for; then the ideal form.
   */
  @Test
  void theSettingsAreThoseOfTheRuleForTheDeclaredTray() {
    PidGains gains = fresh().gains();
    double f = 1 + 49.443 / 153;
    assertEquals(905.576 / (41.6044 * 38.25) * f, gains.gain(), 1e-3);
    assertEquals(153 * f, gains.integralS(), 0.1);
    assertEquals(49.443 / f, gains.derivativeS(), 0.01);
  }

  @Test
  void noHeatIsAskedForWhileTheBathIsNotKnown() {
    PidRegulator regulator = fresh();
    assertEquals(0, regulator.duty(at(0, 40, Double.NaN, 20, true)));
    assertEquals(1, regulator.duty(at(1, 40, 20, 20, true)));
    assertEquals(0, regulator.duty(at(2, 40, Double.NaN, 20, true)));
    assertEquals(0, regulator.duty(at(3, 40, Double.NaN, 20, false)));
  }

  @Test
  void aBathKnownAgainIsHeldAsBefore() {
    Loop loop = reference().run(3600);
    double before = loop.duty;
    assertEquals(0, loop.regulator.duty(loop.input(Double.NaN, true)));
    double after = loop.regulator.duty(loop.input(loop.bathReadC(), true));
    assertEquals(before, after, 0.08); // the derivative begins anew
  }

  @Test
  void whileHeatIsWithheldTheDutyShownIsWhatWouldBeAskedAndNothingWindsUp() {
    PidRegulator regulator = fresh();
    double hold = TrayModel.REFERENCE.holdDuty(40, RoomModel.REFERENCE);
    for (int s = 0; s < 3600; s++) {
      double shown = regulator.duty(at(s, 40, 39.9, 42, false));
      assertEquals(hold + regulator.gains().gain() * 0.1, shown, 1e-9);
    }
    double first = regulator.duty(at(3600, 40, 39.9, 42, true));
    assertEquals(hold + regulator.gains().gain() * 0.1, first, 1e-9);
  }

  @Test
  void atSetTheFirstDutyIsTheOneThatHoldsTheDeclaredTray() {
    for (double setC : new double[] {15, 25, 40, 50}) {
      double hold = Math.min(1, Math.max(0, TrayModel.REFERENCE.holdDuty(setC, ROOM)));
      assertEquals(hold, fresh().duty(at(0, setC, setC, NO_PLATE, true)), 1e-9);
    }
  }

  @Test
  void theDutyHoldsStillBetweenTwoReadings() {
    PidRegulator regulator = fresh();
    double first = regulator.duty(at(1, 40, 39.75, 45, true));
    for (int i = 0; i < 9; i++) {
      assertEquals(first, regulator.duty(at(1, 40, 39.75, 45, true)));
    }
    assertTrue(regulator.duty(at(2, 40, 39.6875, 45, true)) > first);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.5, -0.1, 0.1, 0.5})
  void aNewSetTemperatureMovesTheDutyByItsProportionalPartAndLittleMore(double changeK) {
    Loop loop = reference().run(3600);
    double before = loop.regulator.duty(loop.input(loop.bathReadC(), true));
    loop.setC = 40 + changeK;
    loop.run(1.1); // until the next reading
    double proportional = loop.regulator.gains().gain() * changeK;
    double expected = Math.max(0, Math.min(1, before + proportional));
    assertEquals(expected, loop.duty, 0.15);
    loop.run(1800);
    assertEquals(40 + changeK, loop.plant.bathC(), 0.1);
  }

  @Test
  void aPourAndAColdSheetAreMadeUpForWithoutOvershoot() {
    Loop loop = reference().run(3600);
    loop.plant.pour(0.3, 20);
    loop.highestBathC = 0;
    loop.run(1800);
    assertEquals(40, loop.plant.bathC(), 0.1);
    assertTrue(loop.highestBathC < 40.2, "after the pour " + loop.highestBathC);
    loop.plant.sheet(210, 15);
    loop.highestBathC = 0;
    loop.run(900);
    assertEquals(40, loop.plant.bathC(), 0.1);
    assertTrue(loop.highestBathC < 40.2, "after the sheet " + loop.highestBathC);
  }

  @Test
  void whateverIsReadTheDutyStaysBetweenNothingAndFull() {
    Random random = new Random(11);
    PidRegulator regulator = fresh();
    long nanos = 0;
    for (int i = 0; i < 50_000; i++) {
      nanos += (long) (SECOND * 8 * random.nextDouble());
      double setC = random.nextInt(50) == 0 ? 15 + 35 * random.nextDouble() : 40;
      double bathC = random.nextInt(20) == 0 ? Double.NaN : 10 + 50 * random.nextDouble();
      double plateC = random.nextInt(20) == 0 ? Double.NaN : 10 + 70 * random.nextDouble();
      boolean allowed = random.nextInt(5) > 0;
      double duty =
          regulator.duty(
              new RegulatorInput(0.1, setC, bathC, nanos, plateC, nanos, allowed, false, nanos));
      assertTrue(duty >= 0 && duty <= 1, "duty " + duty);
      assertTrue(!(plateC >= CEILING_C) || duty == 0, "over a plate of " + plateC);
    }
  }

  private static PidRegulator fresh() {
    return new PidRegulator(TrayModel.REFERENCE, ROOM, CEILING_C);
  }

  private static Loop reference() {
    return new Loop(PlantParameters.REFERENCE, TrayModel.REFERENCE, CEILING_C, 40);
  }

  private static RegulatorInput at(
      int second, double setC, double bathC, double plateC, boolean allowed) {
    return new RegulatorInput(
        0.1,
        setC,
        bathC,
        second * SECOND,
        plateC,
        second * SECOND,
        allowed,
        false,
        second * SECOND);
  }
}
