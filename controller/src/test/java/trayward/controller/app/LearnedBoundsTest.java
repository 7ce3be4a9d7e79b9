package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.LearnedTray.Figure;

/** A lesson is taken over within its bounds, told just inside and just outside of each. */
class LearnedBoundsTest {

  private static final double AREA = 0.072;

  private static LearnedTray with(String what, double value, double doubt, double rmsK) {
    return new LearnedTray(
        "tray",
        0,
        250,
        true,
        figure("heater", what, value, 250, doubt),
        figure("plate", what, value, 1100, doubt),
        figure("coupling", what, value, 18, doubt),
        figure("dry loss", what, value, 2.5, doubt),
        figure("evaporation", what, value, 1, doubt),
        figure("bath lag", what, value, 5, doubt),
        figure("plate lag", what, value, 3, doubt),
        figure("wall", what, value, 100, doubt),
        rmsK);
  }

  private static Figure figure(
      String name, String what, double value, double otherwise, double doubt) {
    return name.equals(what) ? new Figure(value, doubt) : new Figure(otherwise, 0.05);
  }

  @ParameterizedTest
  @CsvSource({
    "heater, 176, 174",
    "heater, 324, 326",
    "plate, 91, 89",
    "plate, 1999, 2001",
    "coupling, 4.1, 3.9",
    "coupling, 44.9, 45.1",
    "dry loss, 0.22, 0.21",
    "dry loss, 10.7, 10.9",
    "evaporation, 0.11, 0.09",
    "evaporation, 3.9, 4.1",
    "bath lag, 0.6, 0.4",
    "bath lag, 44, 46",
    "plate lag, 0.4, 0.2",
    "plate lag, 44, 46",
    "wall, 0.6, 0.4",
    "wall, 4900, 5100"
  })
  void eachNumberHasItsRange(String what, double inside, double outside) {
    assertEquals("", LearnedBounds.wrong(with(what, inside, 0.05, 0.03), AREA));
    String wrong = LearnedBounds.wrong(with(what, outside, 0.05, 0.03), AREA);
    assertTrue(wrong.startsWith(what + ": found "), wrong);
  }

  @ParameterizedTest
  @CsvSource({"heater, 250, 0.08", "plate, 1100, 0.35", "evaporation, 1, 0.5"})
  void aLessonLessSureThanADeclarationIsNone(String what, double value, double declared) {
    assertEquals("", LearnedBounds.wrong(with(what, value, declared, 0.03), AREA));
    for (double doubt : new double[] {declared * 1.01, 0, Double.NaN}) {
      String wrong = LearnedBounds.wrong(with(what, value, doubt, 0.03), AREA);
      assertEquals(what + ": as unsure as before the warm-up", wrong);
    }
  }

  @Test
  void readingsThatMissTheModelTeachNothing() {
    assertEquals("", LearnedBounds.wrong(with("", 0, 0, 0.15), AREA));
    assertTrue(LearnedBounds.wrong(with("", 0, 0, 0.16), AREA).contains("0.16 K"));
    assertTrue(!LearnedBounds.wrong(with("", 0, 0, Double.NaN), AREA).isEmpty());
  }
}
