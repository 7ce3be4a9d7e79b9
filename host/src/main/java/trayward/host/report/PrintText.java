package trayward.host.report;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import trayward.host.session.Correction;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.session.PrintEntries;
import trayward.host.session.PrintField;
import trayward.host.session.PrintSummary;
import trayward.host.session.TraceSample;

/** Prints as text for a terminal. Stateless. */
public final class PrintText {

  /** Rows of the trace shown; the whole is in the export. */
  private static final int TRACE_ROWS = 40;

  private PrintText() {}

  /** A table, one row a print. */
  public static String list(
      List<Print> prints,
      Function<Print, PrintSummary> summaries,
      Map<Long, Map<PrintField, String>> fields) {
    if (prints.isEmpty()) {
      return "No prints yet.\n";
    }
    StringBuilder out = new StringBuilder();
    line(
        out,
        "%5s  %-20s %9s %9s %8s %8s  %s",
        "print",
        "in at (UTC)",
        "emergence",
        "pull",
        "mean °C",
        "swing K",
        "title; paper; negative");
    for (Print print : prints) {
      PrintSummary s = summaries.apply(print);
      line(
          out,
          "%5d  %-20s %9s %9s %8s %8s  %s",
          print.number(),
          print.startedWall().toString().substring(0, 19).replace('T', ' '),
          clock(s.emergenceS()),
          print.inProgress() ? "in now" : clock(s.pullS()),
          value(s.meanC(), "%.2f"),
          value(swing(s), "%.2f"),
          words(print, fields.getOrDefault(print.number(), Map.of())));
    }
    return out.toString();
  }

  private static String words(Print print, Map<PrintField, String> fields) {
    return Stream.of(
            print.title(),
            fields.getOrDefault(PrintField.PAPER, ""),
            fields.getOrDefault(PrintField.NEGATIVE, ""))
        .filter(text -> !text.isEmpty())
        .collect(Collectors.joining("; "));
  }

  private static OptionalDouble swing(PrintSummary s) {
    return s.maxC().isPresent() && s.minC().isPresent()
        ? OptionalDouble.of(s.maxC().getAsDouble() - s.minC().getAsDouble())
        : OptionalDouble.empty();
  }

  /** One print whole, with at most some rows of its trace. */
  public static String whole(
      Print print, PrintSummary s, PrintEntries said, double inS, List<TraceSample> samples) {
    StringBuilder out = new StringBuilder();
    line(out, "print %d%s", print.number(), print.title().isEmpty() ? "" : ": " + print.title());
    for (Mark mark : print.marks()) {
      line(
          out,
          "  %-10s %8s  %s °C  by %s",
          mark.kind().word(),
          clock(OptionalDouble.of(mark.sessionS() - inS)),
          value(mark.bathC(), "%.2f"),
          mark.by());
    }
    line(
        out,
        "  bath       in %s, emergence %s, pull %s °C",
        value(s.atInC(), "%.2f"),
        value(s.atEmergenceC(), "%.2f"),
        value(s.atPullC(), "%.2f"));
    line(
        out,
        "             mean %s, least %s, most %s °C, deviation %s K over %d samples",
        value(s.meanC(), "%.2f"),
        value(s.minC(), "%.2f"),
        value(s.maxC(), "%.2f"),
        value(s.deviationK(), "%.3f"),
        s.samples());
    if (!print.notes().isEmpty()) {
      line(out, "  notes      %s", print.notes());
    }
    said(out, said);
    int every = Math.max(1, (samples.size() + TRACE_ROWS - 1) / TRACE_ROWS);
    line(out, "  trace, %s:", every == 1 ? "every sample" : "every " + every + " samples");
    for (int i = 0; i < samples.size(); i += every) {
      TraceSample sample = samples.get(i);
      line(
          out,
          "    %8s  %6.2f °C  set %.1f  duty %.2f",
          clock(OptionalDouble.of(sample.sessionS() - inS)),
          sample.bathC(),
          sample.setC(),
          sample.duty());
    }
    return out.toString();
  }

  private static void said(StringBuilder out, PrintEntries said) {
    said.bath()
        .ifPresent(
            b ->
                line(
                    out,
                    "  in bath %-5d %.2f L, strength %.3f, bromide %.2f ± %.2f g/L,"
                        + " sulfite %.1f ± %.1f g/L, %.2f m² a litre developed before",
                    b.bathId(),
                    b.litres(),
                    b.strength(),
                    b.bromideGPerL(),
                    2 * b.bromideDoubtGPerL(),
                    b.sulfiteGPerL(),
                    2 * b.sulfiteDoubtGPerL(),
                    b.areaM2PerL()));
    said.fields()
        .forEach(
            (field, value) ->
                line(
                    out, "  %-18s %s %s", field.word(), value, field.number() ? field.unit() : ""));
    said.steps().forEach(step -> line(out, "  step %-5d %s", step.n(), step.words()));
    said.pictures()
        .forEach(
            p -> line(out, "  picture %d  %s, %d x %d", p.id(), p.file(), p.width(), p.height()));
    // What was said for the first time corrects nothing.
    for (Correction c : said.history().stream().filter(c -> !c.was().isEmpty()).toList()) {
      String at = c.wall().toString().substring(0, 16).replace('T', ' ');
      line(out, "  %s  %s: was %s, became %s", at, c.field(), shown(c.was()), shown(c.became()));
    }
  }

  private static String shown(String text) {
    return text.isEmpty() ? "nothing" : '"' + text + '"';
  }

  /** Minutes and seconds; a dash for none. */
  static String clock(OptionalDouble seconds) {
    if (seconds.isEmpty()) {
      return "-";
    }
    long whole = Math.round(seconds.getAsDouble());
    return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
  }

  private static String value(OptionalDouble value, String format) {
    return value.isPresent() ? String.format(Locale.ROOT, format, value.getAsDouble()) : "-";
  }

  private static void line(StringBuilder out, String format, Object... values) {
    // What a person typed may hold anything; a terminal would obey control characters.
    String text = String.format(Locale.ROOT, format, values).stripTrailing();
    out.append(text.replaceAll("[\\p{Cntrl}&&[^\n\t]]", "\uFFFD")).append('\n');
  }
}
