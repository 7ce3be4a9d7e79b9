package trayward.host.report.plan;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.Map;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;

/** Asks planners with {@code name=value} words. */
final class Plans {

  private Plans() {}

  private static Map<String, String> told(String words) {
    Map<String, String> told = new LinkedHashMap<>();
    for (String word : words.isBlank() ? new String[0] : words.split(" ", -1)) {
      int at = word.indexOf('=');
      told.put(word.substring(0, at), word.substring(at + 1));
    }
    return told;
  }

  static PlanAnswer answer(String planner, String words) {
    Checked<PlanAnswer> checked = Planners.of(planner).orElseThrow().answer(told(words));
    return (PlanAnswer) assertInstanceOf(Checked.Good.class, checked, checked.toString()).value();
  }

  static JsonNode ask(String planner, String words) {
    return PlanJson.node(answer(planner, words));
  }

  static Problem problem(String planner, String words) {
    Checked<PlanAnswer> checked = Planners.of(planner).orElseThrow().answer(told(words));
    return assertInstanceOf(Checked.Bad.class, checked, words).problem();
  }
}
