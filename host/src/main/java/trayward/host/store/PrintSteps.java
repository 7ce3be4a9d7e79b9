package trayward.host.store;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Checked;
import trayward.host.bath.Dilution;
import trayward.host.bath.Problem;
import trayward.host.session.Correction;
import trayward.host.session.FieldRule;
import trayward.host.session.PrintStep;
import trayward.host.session.StepKind;

/** Steps after the developer: read, entered, taken back. */
final class PrintSteps {

  private PrintSteps() {}

  /** A step of what a person entered, without its number; or what is wrong. */
  static Checked<PrintStep> read(
      String kind, String seconds, String dilution, String what, Instant wall) {
    Optional<StepKind> known = StepKind.of(kind);
    Optional<Problem> problem =
        known
            .map(k -> stepProblem(seconds, dilution, what))
            .orElse(Optional.of(new Problem("kind", kind, StepKind.words())));
    if (problem.isPresent()) {
      return new Checked.Bad<>(problem.get());
    }
    double s = FieldRule.numberOf(seconds);
    PrintStep step =
        new PrintStep(
            0,
            known.orElseThrow(),
            Double.isNaN(s) ? OptionalDouble.empty() : OptionalDouble.of(s),
            dilution.strip(),
            what.strip(),
            wall);
    return new Checked.Good<>(step);
  }

  private static Optional<Problem> stepProblem(String seconds, String dilution, String what) {
    if (!PrintStep.SECONDS.takes(seconds)) {
      return Optional.of(new Problem("seconds", seconds, PrintStep.SECONDS.accepted()));
    }
    if (!PrintStep.WHAT.takes(what)) {
      return Optional.of(new Problem("what", what, PrintStep.WHAT.accepted()));
    }
    return !dilution.isEmpty()
            && Dilution.read("dilution", dilution) instanceof Checked.Bad<Dilution> bad
        ? Optional.of(bad.problem())
        : Optional.empty();
  }

  /** Adds one to a print that is in the log and has room for more. */
  static Checked<PrintStep> add(Handle handle, long number, PrintStep step) {
    if (PrintRows.byNumber(handle, number).isEmpty()) {
      return new Checked.Bad<>(
          new Problem("print", Long.toString(number), "a print that is in the log"));
    }
    if (PrintStepRows.ever(handle, number) >= PrintStep.STEPS_MAX) {
      return new Checked.Bad<>(
          new Problem(
              "print",
              Long.toString(number),
              "a print with fewer than " + PrintStep.STEPS_MAX + " steps, those taken back too"));
    }
    PrintStep added = PrintStepRows.add(handle, number, step);
    WordRows.refresh(handle, number);
    return new Checked.Good<>(added);
  }

  /** Takes one back; the history keeps it. */
  static Optional<PrintStep> takeBack(Handle handle, long number, int n, Instant wall) {
    Optional<PrintStep> gone = PrintStepRows.takeBack(handle, number, n, wall);
    gone.ifPresent(
        step -> {
          Correction.Thing print = Correction.Thing.PRINT;
          CorrectionRows.keep(
              handle, new Correction(wall, print, number, "step " + n, step.words(), ""));
          WordRows.refresh(handle, number);
        });
    return gone;
  }
}
