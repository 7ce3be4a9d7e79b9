package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trayward.host.bath.Addition;
import trayward.host.bath.Bath;
import trayward.host.bath.Checked;
import trayward.host.link.Command;
import trayward.host.link.TrayLink;
import trayward.host.report.PrintTraceCsv;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.Session;
import trayward.host.store.MarkResult;
import trayward.host.store.PrintUpdate;
import trayward.host.store.TrayLog;

/** The part of the interface that speaks with the log. Safe on any thread. */
final class LogApi {

  /** Where a mark may say it comes from. */
  private static final List<String> BY = List.of("page", "pedal", "api");

  static final String KINDS = "in, emergence or pull";

  private final TrayLog log;
  private final Logbook logbook;
  private final TrayLink link;
  private final PrintDocuments documents;

  LogApi(TrayLog log, Logbook logbook, TrayLink link) {
    this.log = log;
    this.logbook = logbook;
    this.link = link;
    this.documents = new PrintDocuments(log);
  }

  void routes(RoutesConfig routes) {
    routes.post("/api/sessions", this::beginSession);
    routes.get("/api/baths", this::baths);
    routes.post("/api/baths", this::addBath);
    routes.post("/api/baths/{id}/additions", this::addAddition);
    routes.post("/api/prints", this::beginPrint);
    routes.post("/api/prints/{id}/marks", this::markOf);
    routes.get("/api/prints/{id}/trace.csv", this::trace);
    routes.post("/api/marks", this::mark);
    routes.get(
        "/api/forecast",
        ctx -> {
          throw Refused.notBuilt("the forecast is not part of this version");
        });
  }

  private void beginSession(Context ctx) {
    boolean was = log.openSession().isPresent();
    Session session =
        logbook
            .beginSession()
            .orElseThrow(() -> Refused.unavailable("the controller does not answer"));
    Json.answer(ctx, was ? 200 : 201, documents.session(session));
  }

  private void beginPrint(Context ctx) {
    Optional<String> title = Optional.empty();
    if (!ctx.body().isBlank()) {
      ObjectNode body = Json.body(ctx, List.of("title"));
      title = text(body, "title");
      title.ifPresent(LogApi::checkTitle);
    }
    Print print = marked(logbook.mark(MarkKind.IN, "api"));
    if (title.isPresent()) {
      print = updated(log.updatePrint(print.number(), title, Optional.empty()));
    }
    Json.answer(ctx, 201, document(print));
  }

  private static void checkTitle(String title) {
    if (title.length() > Print.TITLE_MAX) {
      throw Refused.field("title", title, "at most " + Print.TITLE_MAX + " characters");
    }
  }

  private void mark(Context ctx) {
    ObjectNode body = Json.body(ctx, List.of("kind", "by"));
    MarkKind kind = kind(body);
    String by = text(body, "by").orElse("api");
    if (!BY.contains(by)) {
      throw Refused.field("by", by, String.join(", ", BY));
    }
    Json.answer(ctx, 201, document(marked(logbook.mark(kind, by))));
  }

  private void markOf(Context ctx) {
    Print print = known(ctx);
    MarkKind kind = kind(Json.body(ctx, List.of("kind")));
    boolean current = log.currentPrint().filter(p -> p.number() == print.number()).isPresent();
    boolean again = print.at(kind).isPresent();
    if (!current && !again) {
      throw Refused.conflict("print " + print.number() + " is not in progress");
    }
    if (kind == MarkKind.IN) {
      throw Refused.conflict("print " + print.number() + " has its in already");
    }
    Json.answer(ctx, 201, document(marked(logbook.mark(kind, "api"))));
  }

  private Print marked(MarkResult result) {
    // A mark is a sign of presence (SR-15); whether it was delivered does not change the mark.
    var unused = link.send(Command.PRESENCE);
    if (result instanceof MarkResult.Marked made) {
      return made.print();
    }
    if (result instanceof MarkResult.Duplicate same) {
      return same.print();
    }
    throw Refused.conflict(result instanceof MarkResult.Refused r ? r.why() : "refused");
  }

  private static MarkKind kind(ObjectNode body) {
    String word = Json.text(body, "kind", KINDS);
    return MarkKind.of(word).orElseThrow(() -> Refused.field("kind", word, KINDS));
  }

  private static Print updated(PrintUpdate update) {
    if (update instanceof PrintUpdate.Updated done) {
      return done.print();
    }
    if (update instanceof PrintUpdate.Refused refused) {
      throw Refused.problem(refused.problem());
    }
    throw Refused.missing("no such print");
  }

  private static Optional<String> text(ObjectNode body, String field) {
    return body.has(field) ? Optional.of(Json.text(body, field, "a text")) : Optional.empty();
  }

  private void trace(Context ctx) {
    Print print = known(ctx);
    double inS = print.inAt().map(Mark::sessionS).orElse(0.0);
    ctx.contentType("text/csv").result(PrintTraceCsv.text(inS, log.traceOf(print)));
  }

  private Print known(Context ctx) {
    long id = Json.id(ctx);
    return log.print(id).orElseThrow(() -> Refused.missing("no print " + id));
  }

  private ObjectNode document(Print print) {
    return documents.whole(print);
  }

  private void baths(Context ctx) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    int limit = Json.query(ctx, "limit", 100, 1000);
    int offset = Json.query(ctx, "offset", 0, 100_000_000);
    for (Bath bath : log.baths(limit, offset)) {
      list.add(BathJson.bath(bath, log.additions(bath.id())));
    }
    Json.answer(ctx, 200, list);
  }

  private void addBath(Context ctx) {
    ObjectNode body = Json.body(ctx, List.of("name", "litres", "note"));
    Checked<Bath> checked =
        log.addBath(
            Instant.now(),
            Json.text(body, "name", "a text"),
            Json.number(body, "litres", "litres above 0"),
            text(body, "note").orElse(""));
    Json.answer(ctx, 201, BathJson.bath(good(checked), List.of()));
  }

  private void addAddition(Context ctx) {
    long id = Json.id(ctx);
    if (log.bath(id).isEmpty()) {
      throw Refused.missing("no bath " + id);
    }
    ObjectNode body = Json.body(ctx, List.of("what", "millilitres"));
    Checked<Addition> checked =
        log.addAddition(
            id,
            Instant.now(),
            logbook.sessionS().orElse(Double.NaN),
            Json.text(body, "what", "a text"),
            Json.number(body, "millilitres", "millilitres above 0"));
    Json.answer(ctx, 201, BathJson.addition(good(checked)));
  }

  private static <T> T good(Checked<T> checked) {
    if (checked instanceof Checked.Good<T> good) {
      return good.value();
    }
    if (checked instanceof Checked.Bad<T> bad) {
      throw Refused.problem(bad.problem());
    }
    throw new IllegalStateException("a checked value is good or bad");
  }
}
