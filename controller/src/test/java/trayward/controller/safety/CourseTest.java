package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;

/** The last readings of a probe, and a straight line through some of them. */
class CourseTest {

  private static ThermalInput.Sample at(double seconds, double celsius) {
    return new ThermalInput.Sample(celsius, Math.round(seconds * 1e9));
  }

  /** Readings a second apart, the first of them at 0 s. */
  private static Course of(double... celsius) {
    Course course = Course.START;
    for (int i = 0; i < celsius.length; i++) {
      course = course.next(at(i, celsius[i]));
    }
    return course;
  }

  @Test
  void readingsCloserThanNineTenthsOfASecondAddNothing() {
    Course one = Course.START.next(at(0, 20));
    assertSame(one, one.next(at(0.899, 21)));
    assertEquals(2, one.next(at(0.9, 21)).count());
    assertSame(one, one.next(ThermalInput.Sample.NONE));
  }

  @Test
  void seventyTwoReadingsAreKept() {
    Course course = of(new double[100]);
    assertEquals(72, course.count());
    assertEquals(71, course.spanS());
  }

  @Test
  void fewReadingsHaveNoSpanAndNoStep() {
    assertEquals(0, Course.START.spanS());
    assertEquals(0, of(20).spanS());
    assertEquals(1, of(20, 23).spanS());
    assertEquals(0, Course.START.stepK());
    assertEquals(0, of(20).stepK());
    assertEquals(3, of(20, 23).stepK());
    assertEquals(2, of(20, 23, 21).stepK());
  }

  @Test
  void theMeanIsThatOfTheNewestThree() {
    assertEquals(24, of(90, 20, 23, 29).mean(), 1e-12);
    assertEquals(2, of(90, 20, 23, 29).meanAtS(), 1e-12);
    assertEquals(21, of(20, 22).mean(), 1e-12);
    assertEquals(0.5, of(20, 22).meanAtS(), 1e-12);
  }

  @Test
  void aLineGoesThroughReadingsOnALine() {
    Course.Line line = of(10, 12, 14, 16, 18).line(4, 0);
    assertEquals(2, line.slope(), 1e-12);
    assertEquals(4, line.atS());
    assertEquals(18, line.celsius(), 1e-12);
    assertEquals(28, line.at(9), 1e-12);
    assertEquals(10, line.at(0), 1e-12);
  }

  /** Through (0, 1), (1, 0), (2, 2), by hand: slope 1/2, 3/2 at the newest. */
  @Test
  void offALineItIsTheLeastSquares() {
    Course.Line line = of(1, 0, 2).line(2, 0);
    assertEquals(0.5, line.slope(), 1e-12);
    assertEquals(1.5, line.celsius(), 1e-12);
  }

  @Test
  void bothEndsOfItsTimeCount() {
    Course course = of(90, 5, 6, 7, 90);
    assertEquals(1, course.line(3, 1).slope(), 1e-12);
    assertEquals(8, course.line(3, 1).celsius(), 1e-12);
    assertEquals(1, course.line(2, 1).slope(), 1e-12);
    assertEquals(83, of(5, 6, 7, 90).line(1, 0).slope(), 1e-12);
  }

  @Test
  void throughOneReadingItIsLevel() {
    Course.Line line = of(20, 25).line(0, 0);
    assertEquals(0, line.slope());
    assertEquals(25, line.celsius());
  }
}
