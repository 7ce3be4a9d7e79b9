package trayward.host.report.plan;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;

/** A planner's answer as JSON, the same for command line and page. Stateless. */
public final class PlanJson {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private PlanJson() {}

  /** The answer as a tree; null where there is no number. */
  public static JsonNode node(PlanAnswer answer) {
    return MAPPER.valueToTree(cleaned(answer.document()));
  }

  /** The same as text, indented. */
  public static String text(PlanAnswer answer) {
    try {
      return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(node(answer));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of values can always be written", e);
    }
  }

  private static Object cleaned(Object value) {
    if (value instanceof Double number && !number.isNaN() && !number.isInfinite()) {
      return number;
    }
    if (value instanceof Double) {
      return MAPPER.nullNode();
    }
    if (value instanceof Map<?, ?> map) {
      var tree = MAPPER.createObjectNode();
      map.forEach((k, v) -> tree.set(String.valueOf(k), MAPPER.valueToTree(cleaned(v))));
      return tree;
    }
    if (value instanceof List<?> list) {
      return list.stream().map(PlanJson::cleaned).toList();
    }
    return value;
  }
}
