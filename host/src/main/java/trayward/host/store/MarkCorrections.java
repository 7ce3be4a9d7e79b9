package trayward.host.store;

import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import trayward.host.session.Correction;
import trayward.host.session.Mark;
import trayward.host.session.MarkCorrection;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.Print;
import trayward.host.session.PrintSummary;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;

/** Marks put right afterwards. What stood there is kept among the corrections. */
final class MarkCorrections {

  /** Where a mark that was forgotten comes from: somebody entered it on the page. */
  private static final String BY = "page";

  private MarkCorrections() {}

  /**
   * Puts a mark of a print elsewhere, or makes one that was forgotten.
   *
   * @param elapsedS seconds after the print's in as it stands now; negative only for the in itself
   * @param nowS time on the open session's line, seconds; empty where it is not known
   */
  static MarkResult correct(
      Handle handle,
      long number,
      MarkKind kind,
      double elapsedS,
      OptionalDouble nowS,
      Instant wall) {
    Optional<Print> print = PrintRows.byNumber(handle, number);
    Optional<Mark> in = print.flatMap(Print::inAt);
    if (print.isEmpty() || in.isEmpty()) {
      return new MarkResult.Refused("there is no print " + number);
    }
    MarkCorrection.Around around = around(handle, print.get(), nowS);
    double atS = in.get().sessionS() + Math.round(elapsedS * 1000) / 1000.0;
    Optional<String> refusal =
        MarkCorrection.refusal(around, kind, atS).or(() -> tooMany(handle, print.get(), kind));
    if (refusal.isPresent()) {
      return new MarkResult.Refused(refusal.get());
    }
    Instant atWall = in.get().wall().plusMillis(Math.round(elapsedS * 1000));
    put(handle, print.get(), kind, new Moment(atS, atWall));
    keep(handle, print.get(), kind, elapsedS, wall);
    around.before().ifPresent(b -> SummaryRows.renew(handle, b.number()));
    SummaryRows.renew(handle, number);
    return new MarkResult.Marked(PrintRows.byNumber(handle, number).orElseThrow());
  }

  private static MarkCorrection.Around around(Handle handle, Print print, OptionalDouble nowS) {
    Optional<Session> session = SessionRows.byId(handle, print.sessionId());
    boolean open = session.filter(Session::open).isPresent();
    double lastS = Cells.seconds(SessionRows.lastMs(handle, print.sessionId()));
    double untilS =
        open
            ? Math.max(nowS.orElse(lastS), lastS)
            : Math.max(session.map(MarkCorrections::lengthS).orElse(0.0), lastS);
    return new MarkCorrection.Around(
        print,
        PrintRows.neighbour(handle, print, false),
        PrintRows.neighbour(handle, print, true),
        untilS,
        open);
  }

  /** Wall-clock time from beginning to end: the trace's last sample may lie a second before it. */
  private static double lengthS(Session session) {
    return session
        .endedWall()
        .map(end -> (end.toEpochMilli() - session.startedWall().toEpochMilli()) / 1000.0)
        .orElse(0.0);
  }

  private static Optional<String> tooMany(Handle handle, Print print, MarkKind kind) {
    boolean another = print.at(kind).isEmpty();
    return another && MarkRows.ever(handle, print.number()) >= Print.MARKS_MAX
        ? Optional.of("print " + print.number() + " has had the most marks there can be")
        : Optional.empty();
  }

  private static void put(Handle handle, Print print, MarkKind kind, Moment at) {
    OptionalDouble bathC = bathAt(handle, print, at.sessionS());
    Optional<Mark> was = print.at(kind);
    if (was.isPresent()) {
      MarkRows.move(handle, was.get().id(), at, bathC);
    } else {
      MarkRows.insert(handle, print.number(), kind, at, BY, bathC);
    }
    switch (kind) {
      case IN -> PrintRows.moveBeginning(handle, print.number(), at);
      case PULL -> PrintRows.noLongerLeft(handle, print.number());
      case EMERGENCE -> {}
    }
  }

  /** The newest valid reading of the bath at most 10 s before. */
  private static OptionalDouble bathAt(Handle handle, Print print, double atS) {
    return TraceRows.between(
            handle, print.sessionId(), atS - PrintSummary.GAP_MAX_S, atS, LogReader.ROWS_MAX)
        .stream()
        .filter(TraceSample::bathValid)
        .reduce((earlier, later) -> later)
        .map(sample -> OptionalDouble.of(sample.bathC()))
        .orElseGet(OptionalDouble::empty);
  }

  /** Of an in, which everything else is told after, the history keeps by how much it moved. */
  private static void keep(
      Handle handle, Print print, MarkKind kind, double elapsedS, Instant wall) {
    OptionalDouble was = print.elapsedS(kind);
    CorrectionRows.keep(
        handle,
        new Correction(
            wall,
            Correction.Thing.PRINT,
            print.number(),
            kind.word(),
            was.isPresent() ? seconds(was.getAsDouble()) : "",
            seconds(elapsedS)));
  }

  /** A time in the history. */
  static String seconds(double seconds) {
    return String.format(Locale.ROOT, "%.1f s", seconds);
  }
}
