package trayward.host.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import trayward.host.report.BookJson;
import trayward.host.report.EntriesJson;
import trayward.host.session.FieldRule;
import trayward.host.session.ShelfItem;
import trayward.host.session.ShelfKind;
import trayward.host.store.Shelf;

/** The shelf: papers, concentrates, stocks, make-ups and exposures. Any thread. */
final class ShelfApi {

  private static final List<String> FIELDS = List.of("kind", "name", "fields");

  private final Shelf shelf;
  private final Clock clock;

  ShelfApi(Shelf shelf, Clock clock) {
    this.shelf = shelf;
    this.clock = clock;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/shelf", this::list);
    routes.post("/api/shelf", this::add);
    routes.get("/api/shelf/{id}", ctx -> Json.answer(ctx, 200, whole(known(ctx))));
    routes.patch("/api/shelf/{id}", this::change);
    routes.delete("/api/shelf/{id}", this::takeOff);
  }

  private void list(Context ctx) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    ArrayNode kinds = node.putArray("kinds");
    for (ShelfKind kind : ShelfKind.values()) {
      ObjectNode one = kinds.addObject().put("kind", kind.word());
      ArrayNode fields = one.putArray("fields");
      kind.fields().forEach(rule -> fields.add(rule(rule)));
    }
    ArrayNode items = node.putArray("items");
    shelf.all().forEach(item -> items.add(item(item)));
    Json.answer(ctx, 200, node);
  }

  static ObjectNode rule(FieldRule rule) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("name", rule.name()).put("label", rule.label());
    node.put("kind", rule.kind().name().toLowerCase(java.util.Locale.ROOT));
    node.put("accepted", rule.accepted());
    node.put("remembered", rule.remembered());
    return node;
  }

  private static ObjectNode item(ShelfItem item) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    BookJson.item(node, item);
    return node;
  }

  private ObjectNode whole(ShelfItem item) {
    ObjectNode node = item(item);
    EntriesJson.history(node, shelf.history(item.id()));
    return node;
  }

  private ShelfItem known(Context ctx) {
    long id = Json.id(ctx);
    return shelf.item(id).orElseThrow(() -> Refused.missing("nothing " + id + " on the shelf"));
  }

  private void add(Context ctx) {
    ObjectNode body = Json.body(ctx, FIELDS);
    String kinds = String.join(", ", Arrays.stream(ShelfKind.values()).map(k -> k.word()).toList());
    String word = Json.text(body, "kind", kinds);
    ShelfKind kind =
        ShelfKind.of(word).orElseThrow(() -> Refused.field("kind", word, "one of " + kinds));
    String name = Json.text(body, "name", "1 to " + ShelfItem.NAME_MAX + " characters");
    Json.answer(
        ctx, 201, whole(BathApi.good(shelf.add(clock.instant(), kind, name, fields(body)))));
  }

  private void change(Context ctx) {
    ShelfItem was = known(ctx);
    ObjectNode body = Json.body(ctx, FIELDS);
    Map<String, String> fields = new TreeMap<>(was.fields());
    fields.putAll(fields(body));
    String name = body.has("name") ? Json.text(body, "name", "a text") : was.name();
    Json.answer(
        ctx, 200, whole(BathApi.good(shelf.change(clock.instant(), was.id(), name, fields))));
  }

  private void takeOff(Context ctx) {
    ShelfItem was = known(ctx);
    Json.answer(ctx, 200, item(BathApi.good(shelf.takeOff(clock.instant(), was.id()))));
  }

  /** Texts, and numbers as text; null empties a field. */
  static Map<String, String> fields(ObjectNode body) {
    Map<String, String> fields = new TreeMap<>();
    JsonNode given = body.get("fields");
    if (given == null || given.isNull()) {
      return fields;
    }
    if (!(given instanceof ObjectNode object)) {
      throw Refused.field("fields", given.toString(), "an object");
    }
    object
        .properties()
        .forEach(one -> fields.put(one.getKey(), text(one.getKey(), one.getValue())));
    return fields;
  }

  private static String text(String field, JsonNode value) {
    if (value.isNull()) {
      return "";
    }
    if (value.isTextual()) {
      return value.textValue();
    }
    if (value.isNumber()) {
      return value.decimalValue().toPlainString();
    }
    throw Refused.field(field, value.toString(), "a text or a number");
  }
}
