package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import trayward.host.bath.Checked;
import trayward.host.report.EntriesJson;
import trayward.host.session.FieldRule;
import trayward.host.session.Print;
import trayward.host.session.PrintField;
import trayward.host.session.PrintStep;
import trayward.host.session.StepKind;
import trayward.host.store.PrintArchive;
import trayward.host.store.PrintQuery;
import trayward.host.store.PrintRecord;
import trayward.host.store.PrintUpdate;
import trayward.host.store.TrayLog;

/** The print record: found, shown, said. Safe on any thread. */
final class PrintApi {

  private final TrayLog log;
  private final PrintArchive archive;
  private final PrintRecord record;
  private final PrintDocuments documents;
  private final List<String> fields = new ArrayList<>(List.of("title", "notes"));

  PrintApi(TrayLog log) {
    this.log = log;
    this.archive = log.archive();
    this.record = log.record();
    this.documents = new PrintDocuments(log);
    this.fields.addAll(PrintField.words());
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/prints", this::find);
    routes.get("/api/prints/{id}", ctx -> Json.answer(ctx, 200, documents.whole(known(ctx, log))));
    routes.patch("/api/prints/{id}", this::change);
    routes.get("/api/print-fields", this::table);
    routes.get("/api/print-steps", this::kinds);
    routes.post("/api/prints/{id}/steps", this::addStep);
    routes.delete("/api/prints/{id}/steps/{n}", this::takeBackStep);
  }

  static Print known(Context ctx, TrayLog log) {
    long id = Json.id(ctx);
    return log.print(id).orElseThrow(() -> Refused.missing("no print " + id));
  }

  private void find(Context ctx) {
    int limit = Json.query(ctx, "limit", 100, 1000);
    int offset = Json.query(ctx, "offset", 0, 100_000_000);
    String asked = ctx.queryParam("q");
    String words = asked == null ? "" : asked;
    if (words.length() > PrintQuery.WORDS_MAX) {
      throw Refused.field("q", words.length() + " characters", "at most 200 characters");
    }
    Map<PrintField, String> said = new EnumMap<>(PrintField.class);
    for (PrintField field : PrintField.values()) {
      String value = ctx.queryParam(field.word());
      if (value != null && !value.isEmpty()) {
        if (!field.rule().takes(value)) {
          throw Refused.field(field.word(), "what it never says", field.rule().accepted());
        }
        said.put(field, field.kept(value));
      }
    }
    Json.answer(ctx, 200, documents.list(archive.find(new PrintQuery(words, said), limit, offset)));
  }

  private void change(Context ctx) {
    Print print = known(ctx, log);
    ObjectNode body = Json.body(ctx, fields);
    Map<String, String> changes = new LinkedHashMap<>();
    body.fieldNames().forEachRemaining(name -> changes.put(name, Said.text(body, name)));
    PrintUpdate update = record.change(print.number(), changes, Instant.now());
    if (update instanceof PrintUpdate.Refused refused) {
      throw Refused.problem(refused.problem());
    }
    if (!(update instanceof PrintUpdate.Updated done)) {
      throw Refused.missing("no print " + print.number());
    }
    Json.answer(ctx, 200, documents.whole(done.print()));
  }

  private void table(Context ctx) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    for (PrintField field : PrintField.values()) {
      FieldRule rule = field.rule();
      ObjectNode one = list.addObject();
      one.put("name", rule.name()).put("label", rule.label());
      one.put("kind", rule.kind().name().toLowerCase(Locale.ROOT));
      one.put("unit", field.unit().isEmpty() ? null : field.unit());
      Json.put(one, "least", field.number() ? rule.least() : Double.NaN);
      Json.put(one, "most", rule.most());
      one.put("accepted", rule.accepted()).put("remembered", rule.remembered());
      ArrayNode values = one.putArray("values");
      if (rule.remembered()) {
        archive.remembered(field).forEach(values::add);
      }
    }
    Json.answer(ctx, 200, list);
  }

  private void kinds(Context ctx) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    for (StepKind kind : StepKind.values()) {
      cautions(list.addObject().put("kind", kind.word()), kind);
    }
    Json.answer(ctx, 200, list);
  }

  private static void cautions(ObjectNode node, StepKind kind) {
    ArrayNode cautions = node.putArray("cautions");
    kind.cautions()
        .forEach(c -> cautions.addObject().put("name", c.word()).put("words", c.words()));
  }

  private void addStep(Context ctx) {
    Print print = known(ctx, log);
    ObjectNode body = Json.body(ctx, List.of("kind", "seconds", "dilution", "what"));
    Checked<PrintStep> checked =
        record.addStep(
            print.number(),
            Json.text(body, "kind", StepKind.words()),
            Said.text(body, "seconds"),
            Said.text(body, "dilution"),
            Said.text(body, "what"),
            Instant.now());
    if (checked instanceof Checked.Bad<PrintStep> bad) {
      throw Refused.problem(bad.problem());
    }
    if (checked instanceof Checked.Good<PrintStep> good) {
      ObjectNode node = Json.MAPPER.createObjectNode();
      EntriesJson.step(node, good.value());
      cautions(node, good.value().kind());
      Json.answer(ctx, 201, node);
    }
  }

  private void takeBackStep(Context ctx) {
    Print print = known(ctx, log);
    String n = ctx.pathParam("n");
    if (!n.matches("[0-9]{1,4}")) {
      throw Refused.field("n", n, "a number");
    }
    if (record.takeBackStep(print.number(), Integer.parseInt(n), Instant.now()).isEmpty()) {
      throw Refused.missing("print " + print.number() + " has no step " + n);
    }
    Json.answer(ctx, 200, documents.whole(print));
  }
}
