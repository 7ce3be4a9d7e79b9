package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.regulate.TrayModel;

/** What a bath falls short of its course when heat is taken away. */
class HeatMissedTest {

  private static HeatMissed heated(int seconds, boolean on, HeatMissed from) {
    HeatMissed now = from;
    for (int i = 0; i < 10 * seconds; i++) {
      now = now.next(on, 0.1);
    }
    return now;
  }

  @Test
  void thePlatesAtBothEndsPassHeatOnWithTheirTime() {
    HeatMissed minute = heated(60, true, HeatMissed.START);
    assertEquals(1 - Math.exp(-60 / 28.0), minute.quickNow(), 1e-9);
    assertEquals(1 - Math.exp(-60 / 170.0), minute.slowNow(), 1e-9);
    HeatMissed off = heated(30, false, minute);
    assertEquals(minute.quickNow() * Math.exp(-30 / 28.0), off.quickNow(), 1e-9);
    assertEquals(minute.slowNow() * Math.exp(-30 / 170.0), off.slowNow(), 1e-9);
  }

  @Test
  void aCourseThatBeginsAnewKeepsThePlates() {
    HeatMissed minute = heated(60, true, HeatMissed.START);
    assertEquals(12, minute.quick().count());
    assertEquals(
        new HeatMissed(Blocks.START, Blocks.START, minute.quickNow(), minute.slowNow()),
        minute.anew());
  }

  /** 0.65 of 250 W into twice a litre and 0.6 L: 0.015 K/s. */
  @Test
  void theLeastIsThatOfTheWeakestHeaterOnTheMostLiquid() {
    HeatMissed long1 = heated(2000, true, HeatMissed.START);
    HeatMissed.Least least = long1.least(TrayModel.REFERENCE, 12);
    double perS = 0.65 * 250 / (4180 * 2.6);
    assertEquals(perS, least.kelvinPerS(), 1e-12);
    double slow = perS * (300 - 170 * (1 - Math.exp(-300 / 170.0)));
    assertEquals(slow, least.kelvin(300), 1e-4);
    HeatMissed minute = heated(60, true, HeatMissed.START);
    HeatMissed.Least young = minute.least(TrayModel.REFERENCE, 12);
    assertEquals(minute.quickNow(), young.quickEnd());
    assertEquals(minute.slowNow(), young.slowEnd());
    assertEquals(minute.quick().mean(0, 12), young.quick());
    assertEquals(minute.slow().mean(0, 12), young.slow());
  }

  /** Pours may have doubled it: 4 L and 0.6 L where two were said. */
  @Test
  void twiceTheLiquidIsWarmedByLess() {
    TrayModel two = new TrayModel(2, 0.072, 1100, 18, 2.5, 0.5, 250, 1);
    double perS = HeatMissed.START.least(two, 12).kelvinPerS();
    assertEquals(0.65 * 250 / (4180 * 4.6), perS, 1e-12);
  }

  @Test
  void ofBothPlatesTheOneThatShowsLessCounts() {
    HeatMissed.Least quick = new HeatMissed.Least(1, 0.1, 0.2, 5, 5);
    assertEquals(0.1 * 50 - 0.2 * 28 * (1 - Math.exp(-50 / 28.0)), quick.kelvin(50), 1e-9);
    HeatMissed.Least slow = new HeatMissed.Least(2, 5, 1, 0.1, 0.2);
    assertEquals(2 * (0.1 * 50 - 0.2 * 170 * (1 - Math.exp(-50 / 170.0))), slow.kelvin(50), 1e-9);
  }
}
