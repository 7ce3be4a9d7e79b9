package trayward.host.report.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a planner says, written once for people and machines alike. Built by one thread and then
 * only read.
 */
public final class PlanAnswer {

  private final Map<String, Object> document = new LinkedHashMap<>();
  private final List<String> lines = new ArrayList<>();
  private final List<String> cautions = new ArrayList<>();

  PlanAnswer(String planner, PlanWords words) {
    document.put("plan", planner);
    document.put("asked", words.asked());
    String taken = words.taken();
    if (!taken.isEmpty()) {
      lines.add(taken);
    }
  }

  /** A number, in a line of its own. */
  PlanAnswer number(String key, String words, double value, String unit) {
    document.put(key, Numbers.rounded(value));
    lines.add((words + ": " + Numbers.shown(value) + " " + unit).stripTrailing());
    return this;
  }

  /** A number for machines that stands in another's line. */
  PlanAnswer quiet(String key, double value) {
    document.put(key, Numbers.rounded(value));
    return this;
  }

  /** Something that is no number, in a line of its own. */
  PlanAnswer words(String key, String line) {
    document.put(key, line);
    lines.add(line);
    return this;
  }

  /** Nothing, and why. */
  PlanAnswer none(String key, String line) {
    document.put(key, Double.NaN);
    lines.add(line);
    return this;
  }

  /** Several numbers of the same kind. */
  PlanAnswer list(String key, String words, List<Double> values, String unit) {
    document.put(key, values.stream().map(Numbers::rounded).toList());
    String shown = String.join(", ", values.stream().map(Numbers::shown).toList());
    lines.add((words + ": " + shown + " " + unit).stripTrailing());
    return this;
  }

  /** A heading in the text. */
  PlanAnswer heading(String words) {
    lines.add(words + ":");
    return this;
  }

  /** A row of a table, with its line. */
  PlanAnswer row(String key, Map<String, Object> row, String line) {
    @SuppressWarnings("unchecked") // only this method writes it
    List<Object> rows = (List<Object>) document.computeIfAbsent(key, k -> new ArrayList<>());
    rows.add(row);
    lines.add("  " + line);
    return this;
  }

  /** What a person must know who acts on it. */
  PlanAnswer caution(String words) {
    cautions.add(words);
    return this;
  }

  /** For machines: numbers, texts, lists and maps by key; NaN where there is none. */
  public Map<String, Object> document() {
    Map<String, Object> all = new LinkedHashMap<>(document);
    all.put("cautions", List.copyOf(cautions));
    return all;
  }

  /** For people, line by line. */
  public List<String> text() {
    List<String> all = new ArrayList<>(lines);
    all.addAll(cautions);
    return all;
  }
}
