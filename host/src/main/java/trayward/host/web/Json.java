package trayward.host.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.List;
import java.util.OptionalDouble;

/** JSON in and out of requests, checked field by field. Stateless. */
final class Json {

  static final ObjectMapper MAPPER =
      JsonMapper.builder().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS).build();

  /** The body that carries a refused start through. */
  private static final String CONFIRM = "{\"confirmed\": true}";

  private Json() {}

  static void answer(Context ctx, int status, JsonNode node) {
    ctx.status(status).contentType("application/json; charset=utf-8").result(write(node));
  }

  static void problem(Context ctx, Refused refused) {
    ObjectNode node = MAPPER.createObjectNode();
    node.put("type", "about:blank");
    node.put("title", refused.title());
    node.put("status", refused.status());
    node.put("detail", refused.detail());
    if (refused.confirmable()) {
      node.put("confirm", CONFIRM);
    }
    if (!refused.field().isEmpty()) {
      node.put("field", refused.field());
      node.put("found", refused.found());
      node.put("accepted", refused.accepted());
    }
    ctx.status(refused.status())
        .contentType("application/problem+json; charset=utf-8")
        .result(write(node));
  }

  static String write(JsonNode node) {
    try {
      return MAPPER.writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of values can always be written", e);
    }
  }

  /** The body as an object with no fields but {@code known}. */
  static ObjectNode body(Context ctx, List<String> known) {
    JsonNode node;
    try {
      node = MAPPER.readTree(ctx.body());
    } catch (JsonProcessingException e) {
      throw Refused.field("body", "no JSON", "a JSON object");
    }
    if (!(node instanceof ObjectNode object)) {
      throw Refused.field("body", "no JSON object", "a JSON object");
    }
    object
        .fieldNames()
        .forEachRemaining(
            name -> {
              if (!known.contains(name)) {
                throw Refused.field(name, "an unknown field", String.join(", ", known));
              }
            });
    return object;
  }

  /** The same, where no body at all says nothing. */
  static ObjectNode optionalBody(Context ctx, List<String> known) {
    return ctx.body().isBlank() ? MAPPER.createObjectNode() : body(ctx, known);
  }

  static double number(ObjectNode body, String field, String accepted) {
    JsonNode value = body.get(field);
    if (value == null || !value.isNumber() || !Double.isFinite(value.doubleValue())) {
      throw Refused.field(field, value == null ? "nothing" : value.toString(), accepted);
    }
    return value.doubleValue();
  }

  static boolean flag(ObjectNode body, String field) {
    JsonNode value = body.get(field);
    if (value == null || !value.isBoolean()) {
      throw Refused.field(field, value == null ? "nothing" : value.toString(), "true or false");
    }
    return value.booleanValue();
  }

  static String text(ObjectNode body, String field, String accepted) {
    JsonNode value = body.get(field);
    if (value == null || !value.isTextual()) {
      throw Refused.field(field, value == null ? "nothing" : value.toString(), accepted);
    }
    return value.textValue();
  }

  static long id(Context ctx) {
    return number(ctx, "id");
  }

  /** A whole number in the path. */
  static long number(Context ctx, String name) {
    String text = ctx.pathParam(name);
    if (!text.matches("[0-9]{1,15}")) {
      throw Refused.field(name, text, "a number");
    }
    return Long.parseLong(text);
  }

  /** Whether the person says so again after a refusal that asked for it. */
  static boolean confirmed(ObjectNode body) {
    return body.has("confirmed") && flag(body, "confirmed");
  }

  static int query(Context ctx, String name, int otherwise, int max) {
    return query(ctx, name, otherwise, 0, max);
  }

  static int query(Context ctx, String name, int otherwise, int min, int max) {
    String text = ctx.queryParam(name);
    if (text == null) {
      return otherwise;
    }
    int number = text.matches("[0-9]{1,9}") ? Integer.parseInt(text) : -1;
    if (number < min || number > max) {
      throw Refused.field(name, text, "a whole number from " + min + " to " + max);
    }
    return number;
  }

  static void put(ObjectNode node, String field, double value) {
    if (Double.isFinite(value)) {
      node.put(field, Math.round(value * 1e4) / 1e4);
    } else {
      node.putNull(field);
    }
  }

  static void put(ObjectNode node, String field, OptionalDouble value) {
    put(node, field, value.orElse(Double.NaN));
  }
}
