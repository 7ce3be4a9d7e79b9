package trayward.host.report.card;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import trayward.host.bath.BookEntry;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.session.PrintEntries;
import trayward.host.session.PrintField;
import trayward.host.session.PrintStep;
import trayward.host.session.PrintSummary;
import trayward.host.session.Session;
import trayward.host.session.StepCaution;
import trayward.host.store.BookArchive;
import trayward.host.store.LogReader;

/**
 * A session on paper: one HTML file without a script and without anything from elsewhere. Every
 * text goes through {@link #escaped}. One thread.
 */
public final class SessionSheet {

  /** Most prints on a sheet: five times a long day's. */
  private static final int PRINTS_MAX = 200;

  private static final String STYLE = "/trayward/sheet.css";

  private final LogReader log;
  private final Session session;
  private final List<Print> prints;
  private final StringBuilder out = new StringBuilder();

  private SessionSheet(LogReader log, Session session, List<Print> prints) {
    this.log = log;
    this.session = session;
    this.prints = prints;
  }

  /** The file's text. */
  public static String html(LogReader log, Session session) throws IOException {
    return new SessionSheet(log, session, prints(log, session)).written();
  }

  private static List<Print> prints(LogReader log, Session session) {
    return Stream.iterate(0, offset -> offset + LogReader.ROWS_MAX)
        .map(offset -> log.prints(LogReader.ROWS_MAX, offset))
        .takeWhile(page -> !page.isEmpty())
        .flatMap(List::stream)
        .filter(print -> print.sessionId() == session.id())
        .limit(PRINTS_MAX)
        .sorted(Comparator.comparingLong(Print::number))
        .toList();
  }

  /** A text as it stands between tags and in attributes. */
  static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;")
        .replaceAll("[\\p{Cntrl}&&[^\n\t]]", "\uFFFD");
  }

  private String written() throws IOException {
    String title = "Session " + session.id() + ", " + minute(session.startedWall());
    out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    out.append("<meta http-equiv=\"Content-Security-Policy\"");
    out.append(" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n");
    tag("title", title);
    out.append("<style>\n").append(style()).append("</style>\n</head>\n<body>\n");
    tag("h1", title + " UTC");
    if (log.invented()) {
      out.append("<p class=\"invented\">INVENTED SEASON: nothing of this was ever done.</p>\n");
    }
    tag("p", ending());
    String felt = log.archive().symptoms(List.of(session.id())).getOrDefault(session.id(), "");
    tag("h2", "Temperature of the bath");
    SessionTrace.svg(out, log.trace(session.id(), 0, LogReader.TRACE_MAX), prints);
    tag("h2", "Prints");
    table();
    tag("h2", "Bath book");
    book();
    tag("h2", "Felt");
    tag("p", felt.isEmpty() ? "Nothing was said." : felt);
    tag("h2", "Cautions");
    cautions();
    return out.append("</body>\n</html>\n").toString();
  }

  private static String style() throws IOException {
    try (InputStream file = SessionSheet.class.getResourceAsStream(STYLE)) {
      if (file == null) {
        throw new IOException("the style of the sheet is missing from the archive");
      }
      return new String(file.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private String ending() {
    String tray = session.simulated() ? "Simulated tray. " : "";
    return session
        .endedWall()
        .map(
            end ->
                String.format(
                    Locale.ROOT,
                    "%s%d min, ended: %s.",
                    tray,
                    Duration.between(session.startedWall(), end).toMinutes(),
                    session.ending()))
        .orElse(tray + "Not ended yet.");
  }

  private void table() {
    out.append("<table>\n<tr>");
    for (String head :
        List.of(
            "No.",
            "In",
            "Title; negative",
            "Paper; exposure",
            "Emergence",
            "Pull",
            "Mean °C",
            "Bath",
            "Steps; verdict")) {
      out.append("<th>").append(escaped(head)).append("</th>");
    }
    out.append("</tr>\n");
    for (Print print : prints) {
      row(print, log.summaryOf(print), log.archive().entries(print.number()));
    }
    out.append("</table>\n");
  }

  private void row(Print print, PrintSummary s, PrintEntries said) {
    CardFacts facts =
        new CardFacts(print, s, said, List.of(), "", "", "", java.util.Optional.empty(), false);
    out.append("<tr>");
    cell(Long.toString(print.number()));
    cell(minute(print.startedWall()).substring(11));
    cell(joined(print.title(), said.of(PrintField.NEGATIVE)));
    cell(joined(facts.paper(), facts.size(), facts.exposure()));
    cell(CardFacts.clock(s.emergenceS()));
    cell(print.closed() ? "left without a pull" : CardFacts.clock(s.pullS()));
    cell(CardFacts.celsius(s.meanC()).replace(" °C", ""));
    cell(said.bath().map(b -> b.bathId() + ": " + brief(b.litres(), b.strength())).orElse(""));
    String steps = String.join(", ", said.steps().stream().map(PrintStep::words).toList());
    cell(
        joined(
            steps,
            said.of(PrintField.VERDICT_WET),
            said.of(PrintField.VERDICT_DRY),
            said.of(PrintField.FAULTS),
            print.notes()));
    out.append("</tr>\n");
  }

  private static String brief(double litres, double strength) {
    return String.format(Locale.ROOT, "%.2f\u00a0L, strength %.3f", litres, strength);
  }

  private static String joined(String... texts) {
    return String.join("; ", Stream.of(texts).filter(t -> !t.isEmpty()).toList());
  }

  /** The lines that were entered while the session lasted. */
  private void book() {
    Instant until = session.endedWall().orElse(Instant.MAX);
    boolean any = false;
    for (BookArchive.Pages pages : log.books().baths()) {
      List<BookEntry> lines =
          pages.entries().stream()
              .filter(e -> !e.wall().isBefore(session.startedWall()) && !e.wall().isAfter(until))
              .toList();
      if (!lines.isEmpty()) {
        any = true;
        tag("h3", "Bath " + pages.bath().id() + ", " + pages.bath().name());
        tag(
            "p",
            joined(
                "As made: " + BathWords.contents(log.books().asMade(pages.bath())),
                pages.bath().note()));
        out.append("<ul>\n");
        lines.forEach(e -> tag("li", minute(e.wall()).substring(11) + "  " + BathWords.line(e)));
        out.append("</ul>\n");
      }
    }
    if (!any) {
      tag("p", "Nothing was entered.");
    }
  }

  private void cautions() {
    out.append("<ul>\n");
    tag("li", "Hot developer gives off vapour and burns skin: extraction on, gloves, goggles.");
    prints.stream()
        .flatMap(print -> log.archive().entries(print.number()).steps().stream())
        .flatMap(step -> step.kind().cautions().stream())
        .distinct()
        .map(StepCaution::words)
        .forEach(words -> tag("li", words));
    out.append("</ul>\n");
  }

  private void tag(String name, String text) {
    out.append('<').append(name).append('>').append(escaped(text));
    out.append("</").append(name).append(">\n");
  }

  private void cell(String text) {
    out.append("<td>").append(escaped(text)).append("</td>");
  }

  static String minute(Instant wall) {
    return wall.toString().substring(0, 16).replace('T', ' ');
  }

  static double inS(Print print) {
    return print.inAt().map(Mark::sessionS).orElse(0.0);
  }
}
