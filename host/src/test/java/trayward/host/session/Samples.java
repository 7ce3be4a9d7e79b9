package trayward.host.session;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Short ways to say marks, prints and samples in tests. */
final class Samples {

  static final Instant EVENING = Instant.parse("2026-03-01T20:00:00Z");

  private Samples() {}

  static Mark mark(MarkKind kind, double sessionS) {
    return mark(kind, sessionS, OptionalDouble.empty());
  }

  static Mark mark(MarkKind kind, double sessionS, OptionalDouble bathC) {
    return new Mark(1, kind, sessionS, EVENING, "page", bathC);
  }

  static Print print(Mark... marks) {
    return print(OptionalDouble.empty(), marks);
  }

  static Print print(OptionalDouble closedS, Mark... marks) {
    return new Print(7, 1, EVENING, List.of(marks), "", "", closedS);
  }

  static TraceSample bath(double sessionS, double bathC) {
    return new TraceSample(sessionS, bathC, 45, 40, 0.3, "HOLDING", true);
  }

  /** One sample a second from {@code firstS}. */
  static List<TraceSample> trace(double firstS, double... bathC) {
    List<TraceSample> trace = new ArrayList<>();
    for (int i = 0; i < bathC.length; i++) {
      trace.add(bath(firstS + i, bathC[i]));
    }
    return trace;
  }
}
