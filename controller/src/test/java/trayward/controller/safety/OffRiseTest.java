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

  private static ReadingTrail at(double celsius) {
    return ReadingTrail.START.next(new ThermalInput.Sample(celsius, 1));
  }

  private static HeatLag off(double seconds) {
    return new HeatLag(0, 0, 0, 0, 0, 0, seconds);
  }

  @Test
  void itCountsOnceHeatIsLongOffAndThePlateHotterThanItsBathBeyondDoubt() {
    assertEquals(50, OffRise.START.next(off(20), at(50), at(48)).lowestC());
    assertEquals(OffRise.START, new OffRise(50, false).next(off(19.9), at(50), at(48)));
    assertEquals(50, OffRise.START.next(off(20), at(50), at(48.4375)).lowestC());
    assertEquals(OffRise.START, new OffRise(50, false).next(off(20), at(50), at(48.5)));
    assertEquals(
        OffRise.START, new OffRise(50, false).next(off(20), at(1.5), at(-5)), "colder than ice");
  }

  @Test
  void theLowestReadingIsKept() {
    assertEquals(49, new OffRise(50, false).next(off(20), at(49), at(40)).lowestC());
    assertEquals(50, new OffRise(50, false).next(off(20), at(51), at(40)).lowestC());
  }

  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aWholeKelvinInARunAndThreeAtRestAreEnough() {
    for (State state : State.values()) {
      double enough = state.inRun() ? 1 : state == State.OFF ? Double.POSITIVE_INFINITY : 3;
      assertEquals(enough <= 1, new OffRise(50, false).found(51, state), state.name());
      assertEquals(false, new OffRise(50, false).found(50.9375, state), state.name());
      assertEquals(enough <= 3, new OffRise(50, false).found(53, state), state.name());
      assertEquals(enough < 3, new OffRise(50, false).found(52.9375, state), state.name());
      assertEquals(false, OffRise.START.found(60, state), state.name());
    }
  }

  private static ReadingTrail course(double... celsius) {
    ReadingTrail trail = ReadingTrail.START;
    for (int i = 0; i < celsius.length; i++) {
      trail = trail.next(new ThermalInput.Sample(celsius[i], i * 1_000_000_000L));
    }
    return trail;
  }

  private static boolean foundIn(State state, double... celsius) {
    OffRise rise = OffRise.START;
    HeatLag heat = off(60);
    boolean found = false;
    for (int n = 1; n <= celsius.length; n++) {
      ReadingTrail plate = course(java.util.Arrays.copyOf(celsius, n));
      rise = rise.next(heat, plate, at(40));
      found |= rise.found(plate.median(), state);
    }
    return found;
  }

  /** A reading that leaps by some kelvins and then goes on as before begins to lie: no heat. */
  @Test
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void aLeapIsNoHeat() {
    double[] leapt = new double[30];
    for (int i = 0; i < leapt.length; i++) {
      leapt[i] = (i < 12 ? 50 : 57) - 0.05 * i;
    }
    assertEquals(false, foundIn(State.AFTER_RUN, leapt));
    assertEquals(false, foundIn(State.READY, leapt));
  }

  /** Back on its plate from colder air, with the longest lag of a clamped probe, 8 s. */
  @Test
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void aProbePutBackOnItsPlateComesToRestAndIsNoHeat() {
    for (double lagS : new double[] {2, 4, 8}) {
      double[] back = new double[60];
      for (int i = 0; i < back.length; i++) {
        back[i] = i < 10 ? 30 : 52 - 22 * Math.exp(-(i - 10) / lagS);
      }
      assertEquals(false, foundIn(State.AFTER_RUN, back), "lag " + lagS);
    }
  }

  /** 400 W into the lightest plate of 90 J/K make 4.4 K/s, into the reference plate 0.36 K/s. */
  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aRiseThatGoesOnIsHeatHoweverFast() {
    for (double perS : new double[] {0.1, 0.36, 0.57, 4.4}) {
      double[] rises = new double[50];
      for (int i = 0; i < rises.length; i++) {
        rises[i] = 50 + Math.max(0, i - 10) * perS;
      }
      assertEquals(true, foundIn(State.AFTER_RUN, rises), perS + " K/s");
      assertEquals(true, foundIn(State.READY, rises), perS + " K/s");
    }
  }
}
