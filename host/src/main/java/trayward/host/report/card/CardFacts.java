package trayward.host.report.card;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import trayward.host.bath.BathContents;
import trayward.host.exposure.Stops;
import trayward.host.session.FieldRule;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.session.PrintEntries;
import trayward.host.session.PrintField;
import trayward.host.session.PrintSummary;
import trayward.host.session.StepCaution;
import trayward.host.session.TraceSample;
import trayward.host.store.BookArchive;
import trayward.host.store.LogReader;

/**
 * What a card tells of a print. Immutable.
 *
 * @param print the print
 * @param summary its temperatures and times
 * @param said what was said of it
 * @param trace bath temperatures from a minute before in to a minute after the end
 * @param bathName number and name of its bath; empty where none was in the book
 * @param bathMade how that was made, with what it then held; empty likewise
 * @param lineage which baths go on in it, in words; may be empty
 * @param picture the small picture of the first there is
 * @param invented whether nothing of it is real
 */
record CardFacts(
    Print print,
    PrintSummary summary,
    PrintEntries said,
    List<TraceSample> trace,
    String bathName,
    String bathMade,
    String lineage,
    Optional<Path> picture,
    boolean invented) {

  /** How much of the bath is shown around a print, seconds. */
  private static final double AROUND_S = 60;

  CardFacts {
    trace = List.copyOf(trace);
  }

  static CardFacts of(LogReader log, Print print) {
    PrintEntries said = log.archive().entries(print.number());
    double inS = print.inAt().map(Mark::sessionS).orElse(0.0);
    double endS = print.endS().orElse(inS);
    Optional<BookArchive.Pages> bath =
        said.bath()
            .flatMap(b -> log.books().baths().stream().filter(p -> is(p, b.bathId())).findFirst());
    Optional<BathContents> made = bath.map(b -> log.books().asMade(b.bath()));
    return new CardFacts(
        print,
        log.summaryOf(print),
        said,
        log.trace(print.sessionId(), inS - AROUND_S, endS + AROUND_S),
        bath.map(b -> b.bath().id() + ", " + b.bath().name()).orElse(""),
        bath.map(b -> BathWords.made(b) + ": " + made.map(BathWords::contents).orElse(""))
            .orElse(""),
        made.map(m -> BathWords.lineage(m, id -> log.bath(id).map(b -> b.name()))).orElse(""),
        said.pictures().stream().findFirst().map(p -> log.archive().file(p, true)),
        log.invented());
  }

  private static boolean is(BookArchive.Pages pages, long id) {
    return pages.bath().id() == id;
  }

  double inS() {
    return print.inAt().map(Mark::sessionS).orElse(0.0);
  }

  PlotScale scale() {
    return PlotScale.of(trace, inS() - AROUND_S, print.endS().orElse(inS()) + AROUND_S);
  }

  String title() {
    return print.title().isBlank() ? "(no title)" : print.title();
  }

  String paper() {
    String batch = said.of(PrintField.PAPER_BATCH);
    return said.of(PrintField.PAPER) + (batch.isEmpty() ? "" : ", batch " + batch);
  }

  String size() {
    String width = said.of(PrintField.WIDTH_MM);
    String height = said.of(PrintField.HEIGHT_MM);
    return width.isEmpty() && height.isEmpty() ? "" : width + " x " + height + " mm";
  }

  /** The exposure with its stops worked out. */
  String exposure() {
    StringBuilder out = new StringBuilder();
    String aperture = said.of(PrintField.APERTURE);
    String base = said.of(PrintField.BASE_EXPOSURE_S);
    String stops = said.of(PrintField.STOPS_OVER);
    out.append(aperture.isEmpty() ? "" : "f/" + aperture + ", ");
    out.append(base.isEmpty() ? "" : base + " s");
    out.append(stops.isEmpty() ? "" : " + " + stops + " stops");
    if (!base.isEmpty() && !stops.isEmpty()) {
      double over = FieldRule.numberOf(stops);
      out.append(
          String.format(
              Locale.ROOT,
              " = x %.2f = %.1f s",
              Stops.factor(over),
              Stops.seconds(FieldRule.numberOf(base), over)));
    }
    return out.toString();
  }

  /** The moments, with the bath at each. */
  String times() {
    return "in at "
        + celsius(summary.atInC())
        + ";  emergence "
        + clock(summary.emergenceS())
        + " at "
        + celsius(summary.atEmergenceC())
        + ";  pull "
        + clock(summary.pullS())
        + " at "
        + celsius(summary.atPullC())
        + factor();
  }

  private String factor() {
    return summary.emergenceS().isPresent() && summary.pullS().isPresent()
        ? String.format(
            Locale.ROOT,
            ";  pull / emergence %.2f",
            summary.pullS().getAsDouble() / summary.emergenceS().getAsDouble())
        : "";
  }

  /** The bath between in and pull. */
  String held() {
    return String.format(
        Locale.ROOT,
        "mean %s, least %s, most %s",
        celsius(summary.meanC()),
        celsius(summary.minC()),
        celsius(summary.maxC()));
  }

  /** The cautions that belong to its steps, each once. */
  List<String> cautions() {
    return said.steps().stream()
        .flatMap(step -> step.kind().cautions().stream())
        .distinct()
        .map(StepCaution::words)
        .toList();
  }

  static String clock(OptionalDouble seconds) {
    if (seconds.isEmpty()) {
      return "not marked";
    }
    long whole = Math.round(seconds.getAsDouble());
    return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
  }

  static String celsius(OptionalDouble c) {
    return c.isPresent() ? String.format(Locale.ROOT, "%.1f °C", c.getAsDouble()) : "- °C";
  }
}
