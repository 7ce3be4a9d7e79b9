package trayward.host.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.IntFunction;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.PrintEntries;
import trayward.host.session.PrintField;
import trayward.host.session.PrintSummary;
import trayward.host.session.TraceSample;

/**
 * Every print of the log as files: {@code prints.csv} or {@code prints.json}, and {@code
 * print-N-trace.csv} for each. Stateless.
 */
public final class PrintExport {

  /** Columns of {@code prints.csv}. */
  public static final String HEADER =
      "print,session,started,title,notes,emergence_s,pull_s,in_c,emergence_c,pull_c,mean_c,min_c,"
          + "max_c,deviation_k,samples,"
          + String.join(",", PrintField.words());

  private static final ObjectMapper JSON = new ObjectMapper();

  private PrintExport() {}

  /**
   * Writes everything.
   *
   * @param pages a page of prints, newest first, by offset; empty past the end
   * @param invented whether the log holds an invented season: each print then says so in a field
   * @return how many prints were written
   */
  public static long write(
      Path folder,
      String format,
      IntFunction<List<Print>> pages,
      Function<Print, PrintSummary> summaries,
      Function<Print, PrintEntries> entries,
      Function<Print, List<TraceSample>> traces,
      boolean invented)
      throws IOException {
    Files.createDirectories(folder);
    List<Print> all = new ArrayList<>();
    List<Print> page = pages.apply(0);
    while (!page.isEmpty()) {
      all.addAll(page);
      page = pages.apply(all.size());
    }
    StringBuilder csv = new StringBuilder(HEADER).append(invented ? ",invented\n" : "\n");
    ArrayNode json = JSON.createArrayNode();
    for (Print print : all) {
      PrintSummary summary = summaries.apply(print);
      PrintEntries said = entries.apply(print);
      row(csv, print, summary, said);
      csv.append(invented ? ",yes\n" : "\n");
      ObjectNode node = node(print, summary);
      if (invented) {
        node.put("invented", true);
      }
      EntriesJson.put(node, said);
      json.add(node);
      double inS = print.inAt().map(Mark::sessionS).orElse(0.0);
      Files.writeString(
          folder.resolve("print-" + print.number() + "-trace.csv"),
          PrintTraceCsv.text(inS, traces.apply(print)));
    }
    if (format.equals("json")) {
      Files.writeString(
          folder.resolve("prints.json"),
          JSON.writerWithDefaultPrettyPrinter().writeValueAsString(json) + "\n");
    } else {
      Files.writeString(folder.resolve("prints.csv"), csv);
    }
    return all.size();
  }

  private static void row(StringBuilder out, Print print, PrintSummary s, PrintEntries said) {
    out.append(print.number()).append(',').append(print.sessionId()).append(',');
    out.append(print.startedWall()).append(',');
    out.append(quoted(print.title())).append(',').append(quoted(print.notes())).append(',');
    OptionalDouble[] values = {
      s.emergenceS(),
      s.pullS(),
      s.atInC(),
      s.atEmergenceC(),
      s.atPullC(),
      s.meanC(),
      s.minC(),
      s.maxC(),
      s.deviationK()
    };
    for (OptionalDouble value : values) {
      Decimals.append(out, value.orElse(Double.NaN), 3);
      out.append(',');
    }
    out.append(s.samples());
    for (PrintField field : PrintField.values()) {
      String value = said.of(field);
      out.append(',').append(value.isEmpty() || field.number() ? value : quoted(value));
    }
  }

  /** RFC 4180: quotes doubled, and quoted always. */
  static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }

  private static ObjectNode node(Print print, PrintSummary s) {
    ObjectNode node = JSON.createObjectNode();
    node.put("print", print.number()).put("session", print.sessionId());
    node.put("started", print.startedWall().toString());
    node.put("title", print.title()).put("notes", print.notes());
    ArrayNode marks = node.putArray("marks");
    double inS = print.at(MarkKind.IN).map(Mark::sessionS).orElse(Double.NaN);
    for (Mark mark : print.marks()) {
      ObjectNode one = marks.addObject();
      one.put("kind", mark.kind().word()).put("by", mark.by()).put("at", mark.wall().toString());
      put(one, "elapsed_s", OptionalDouble.of(mark.sessionS() - inS));
      put(one, "bath_c", mark.bathC());
    }
    put(node, "emergence_s", s.emergenceS());
    put(node, "pull_s", s.pullS());
    put(node, "in_c", s.atInC());
    put(node, "emergence_c", s.atEmergenceC());
    put(node, "pull_c", s.atPullC());
    put(node, "mean_c", s.meanC());
    put(node, "min_c", s.minC());
    put(node, "max_c", s.maxC());
    put(node, "deviation_k", s.deviationK());
    node.put("samples", s.samples());
    return node;
  }

  private static void put(ObjectNode node, String field, OptionalDouble value) {
    if (value.isPresent() && Double.isFinite(value.getAsDouble())) {
      node.put(field, Math.round(value.getAsDouble() * 1e3) / 1e3);
    } else {
      node.putNull(field);
    }
  }
}
