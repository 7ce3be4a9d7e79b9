package trayward.host.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;

/** What a person said in a field of a request, as a text. Stateless. */
final class Said {

  private static final String ACCEPTED = "a text, a number, or null";

  private Said() {}

  /** A text or a number as it would be written; empty for null and for a field that is missing. */
  static String text(ObjectNode body, String field) {
    JsonNode value = body.path(field);
    if (value.isMissingNode() || value.isNull()) {
      return "";
    }
    if (value.isTextual()) {
      return value.textValue();
    }
    if (value.isIntegralNumber()) {
      return value.asText();
    }
    if (value.isNumber() && Double.isFinite(value.doubleValue())) {
      return BigDecimal.valueOf(value.doubleValue()).toPlainString();
    }
    String found = value.toString();
    throw Refused.field(field, found.substring(0, Math.min(80, found.length())), ACCEPTED);
  }
}
