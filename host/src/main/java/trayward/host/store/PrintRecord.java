package trayward.host.store;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.session.Correction;
import trayward.host.session.FieldRule;
import trayward.host.session.MarkKind;
import trayward.host.session.PrintField;
import trayward.host.session.PrintStep;
import trayward.host.session.StepKind;

/**
 * What a person says of prints, enters and puts right. Safe on any thread, like the log it comes
 * from. What stood there before is kept in the history. A call that throws {@link LogFailed} has
 * changed nothing.
 */
public final class PrintRecord {

  /** What was felt during a session, in the person's own words. */
  public static final FieldRule SYMPTOMS = FieldRule.text("symptoms", "Symptoms", 2000);

  /** Most corrections of one thing: a hundred times what a careful person makes. */
  static final int HISTORY_MAX = 2000;

  private final LogConnection connection;

  private final BookKeeper keeper;

  PrintRecord(LogConnection connection, BookKeeper keeper) {
    this.connection = connection;
    this.keeper = keeper;
  }

  /**
   * Changes title, notes or fields, all of them or, where one is wrong, none.
   *
   * @param changes texts by name: title, notes, or a name of {@link PrintField}; empty removes
   * @param wall now, for the history
   */
  public PrintUpdate change(long number, Map<String, String> changes, Instant wall) {
    Map<String, String> kept = new LinkedHashMap<>();
    for (Map.Entry<String, String> change : changes.entrySet()) {
      Checked<String> checked = PrintChanges.checked(change.getKey(), change.getValue());
      if (checked instanceof Checked.Bad<String> bad) {
        return new PrintUpdate.Refused(bad.problem());
      }
      if (checked instanceof Checked.Good<String> good) {
        kept.put(change.getKey(), good.value());
      }
    }
    try {
      return connection.write(
          handle ->
              full(handle, Correction.Thing.PRINT, number)
                  .<PrintUpdate>map(PrintUpdate.Refused::new)
                  .orElseGet(() -> change(handle, number, kept, wall)));
    } catch (BookRejected e) {
      return new PrintUpdate.Refused(e.problem());
    }
  }

  /** A sheet of another size used its bath otherwise. */
  private PrintUpdate change(Handle handle, long number, Map<String, String> kept, Instant wall) {
    PrintUpdate update = PrintChanges.make(handle, number, kept, wall);
    if (kept.containsKey("width_mm") || kept.containsKey("height_mm")) {
      BookRows.ofPrint(handle, number).ifPresent(e -> keeper.refresh(handle, e.bathId()));
    }
    return update;
  }

  private static Optional<Problem> full(Handle handle, Correction.Thing thing, long id) {
    return CorrectionRows.count(handle, thing, id) < HISTORY_MAX
        ? Optional.empty()
        : Optional.of(
            new Problem("history", "full", "at most " + HISTORY_MAX + " corrections of one thing"));
  }

  /**
   * Enters a step after the developer.
   *
   * @param kind a word of {@link StepKind}
   * @param seconds a number as text; empty where not said
   * @param dilution such as 1+4; empty where not said
   * @param what what it was done in or with; may be empty
   */
  public Checked<PrintStep> addStep(
      long number, String kind, String seconds, String dilution, String what, Instant wall) {
    Checked<PrintStep> step = PrintSteps.read(kind, seconds, dilution, what, wall);
    return step instanceof Checked.Good<PrintStep> good
        ? connection.write(handle -> PrintSteps.add(handle, number, good.value()))
        : step;
  }

  /** Takes a step back; the log keeps it. Empty where there is none of that number. */
  public Optional<PrintStep> takeBackStep(long number, int n, Instant wall) {
    return connection.write(handle -> PrintSteps.takeBack(handle, number, n, wall));
  }

  /**
   * Puts a mark of a print elsewhere, or makes one that was forgotten.
   *
   * @param elapsedS seconds after the print's in, at most 6 h; of the in itself seconds after, or
   *     negative before, where it stood
   * @param nowS time on the open session's line now, seconds; empty where it is not known
   */
  public MarkResult correctMark(
      long number, MarkKind kind, double elapsedS, OptionalDouble nowS, Instant wall) {
    return connection.write(
        handle ->
            full(handle, Correction.Thing.PRINT, number)
                .<MarkResult>map(problem -> new MarkResult.Refused(problem.accepted()))
                .orElseGet(
                    () -> MarkCorrections.correct(handle, number, kind, elapsedS, nowS, wall)));
  }

  /** Says what was felt during a session; gives the session's text, empty where there is none. */
  public Checked<String> setSymptoms(long session, String text, Instant wall) {
    if (!SYMPTOMS.takes(text)) {
      return new Checked.Bad<>(new Problem(SYMPTOMS.name(), text, SYMPTOMS.accepted()));
    }
    return connection.write(
        handle -> {
          Optional<Problem> full = full(handle, Correction.Thing.SESSION, session);
          if (full.isPresent()) {
            return new Checked.Bad<>(full.get());
          }
          String was = SessionRows.symptoms(handle, List.of(session)).getOrDefault(session, "");
          SessionRows.setSymptoms(handle, session, text);
          CorrectionRows.keep(
              handle,
              new Correction(wall, Correction.Thing.SESSION, session, SYMPTOMS.name(), was, text));
          return new Checked.Good<>(text);
        });
  }

  /**
   * Keeps the summaries of finished prints that lack one, the newest first.
   *
   * @param most how many to look at: each takes a millisecond or so
   * @return how many were kept
   */
  public int keepSummaries(int most) {
    List<Long> complete =
        connection.read(
            handle ->
                SummaryRows.missing(handle, most).stream()
                    .filter(n -> SummaryRows.complete(handle, n))
                    .toList());
    return complete.isEmpty()
        ? 0
        : connection.write(
            handle -> {
              complete.forEach(number -> SummaryRows.renew(handle, number));
              return complete.size();
            });
  }
}
