package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
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

  private static final String PRESSES = "short or long";

  static final String KINDS = "in, emergence or pull";

  private final TrayLog log;
  private final Logbook logbook;
  private final TrayLink link;
  private final boolean atTray;
  private final PrintDocuments documents;

  /**
   * The requests over a log.
   *
   * @param atTray whether who asks stands at the tray, so that a mark shows presence (SR-15)
   */
  LogApi(TrayLog log, Logbook logbook, TrayLink link, boolean atTray) {
    this.log = log;
    this.logbook = logbook;
    this.link = link;
    this.atTray = atTray;
    this.documents = new PrintDocuments(log);
  }

  void routes(RoutesConfig routes) {
    routes.post("/api/sessions", this::beginSession);
    routes.post("/api/prints", this::beginPrint);
    routes.post("/api/prints/{id}/marks", this::markOf);
    routes.get("/api/prints/{id}/trace.csv", this::trace);
    routes.post("/api/marks", this::mark);
    routes.post("/api/pedal", this::pedal);
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

  /** A foot switch that acts as a keyboard: the same rules as the one on a line. */
  private void pedal(Context ctx) {
    String press = Json.text(Json.body(ctx, List.of("press")), "press", PRESSES);
    ObjectNode node = Json.MAPPER.createObjectNode();
    if (press.equals("short")) {
      Print print = marked(logbook.pedalPressed());
      String kind = print.marks().get(print.marks().size() - 1).kind().word();
      node.put("marked", kind).set("print", document(print));
    } else if (press.equals("long")) {
      present();
      node.put("undone", logbook.pedalHeld().map(mark -> mark.kind().word()).orElse(null));
    } else {
      throw Refused.field("press", press, PRESSES);
    }
    Json.answer(ctx, 200, node);
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

  /** A mark is a sign of presence (SR-15); whether it was delivered does not change the mark. */
  private void present() {
    if (atTray) {
      var unused = link.send(Command.PRESENCE);
    }
  }

  private Print marked(MarkResult result) {
    present();
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
}
