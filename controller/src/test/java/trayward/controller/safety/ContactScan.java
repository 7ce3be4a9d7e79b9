package trayward.controller.safety;

import java.util.function.DoubleUnaryOperator;

/** Single scans of the contact test over courses made by hand. */
final class ContactScan {

  private ContactScan() {}

  private static final int CLOSED_MS = 25_000;

  static final Course.Line LEVEL = new Course.Line(0, 0, 0);

  /** Readings a second apart that end now. */
  static Course course(int readings, DoubleUnaryOperator celsiusBackS) {
    Course course = Course.START;
    for (int i = readings - 1; i >= 0; i--) {
      long taken = (100L - i) * 1_000_000_000L;
      course = course.next(new ThermalInput.Sample(celsiusBackS.applyAsDouble(i), taken));
    }
    return course;
  }

  static Course single(double celsius) {
    return course(1, back -> celsius);
  }

  private static ThermalInput.Sample old(Course course) {
    return new ThermalInput.Sample(course.celsius().at(0), Math.round(course.takenS().at(0) * 1e9));
  }

  /** One scan of a second that brings no new reading. */
  static ContactWatch scan(ContactWatch watch, boolean seesPlate) {
    ThermalInput.Sample plate = seesPlate ? old(watch.hot()) : ThermalInput.Sample.NONE;
    ThermalInput in = new ThermalInput(1, false, State.PURGING, old(watch.bath()), plate);
    return watch.next(in, CLOSED_MS);
  }
}
