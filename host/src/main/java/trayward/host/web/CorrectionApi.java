package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import trayward.host.bath.Checked;
import trayward.host.session.Mark;
import trayward.host.session.MarkCorrection;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.Session;
import trayward.host.store.MarkResult;
import trayward.host.store.PrintRecord;
import trayward.host.store.TrayLog;

/** Marks taken back and put right; what a session felt like. Safe on any thread. */
final class CorrectionApi {

  private final TrayLog log;
  private final Logbook logbook;
  private final PrintRecord record;
  private final PrintDocuments documents;

  CorrectionApi(TrayLog log, Logbook logbook) {
    this.log = log;
    this.logbook = logbook;
    this.record = log.record();
    this.documents = new PrintDocuments(log);
  }

  void routes(RoutesConfig routes) {
    routes.post("/api/marks/undo", this::undo);
    routes.patch("/api/prints/{id}/marks/{kind}", this::correct);
    routes.get("/api/sessions", this::sessions);
    routes.patch("/api/sessions/{id}", this::setSymptoms);
  }

  private void undo(Context ctx) {
    Json.optionalBody(ctx, List.of());
    Optional<Long> number =
        log.openSession().flatMap(s -> log.latestPrint(s.id())).map(Print::number);
    Mark gone = logbook.undo().orElseThrow(() -> Refused.conflict("there is no mark to take back"));
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("undone", gone.kind().word());
    node.set("print", number.flatMap(log::print).map(documents::whole).orElse(null));
    Json.answer(ctx, 200, node);
  }

  private void correct(Context ctx) {
    Print print = PrintApi.known(ctx, log);
    String word = ctx.pathParam("kind");
    MarkKind kind = MarkKind.of(word).orElseThrow(() -> Refused.field("kind", word, LogApi.KINDS));
    double most = MarkCorrection.ELAPSED_MAX_S;
    double least = kind == MarkKind.IN ? -most : 0;
    String accepted = String.format(Locale.ROOT, "%.0f to %.0f seconds", least, most);
    double elapsedS = Json.number(Json.body(ctx, List.of("elapsed_s")), "elapsed_s", accepted);
    if (elapsedS < least || elapsedS > most) {
      throw Refused.field("elapsed_s", Double.toString(elapsedS), accepted);
    }
    MarkResult result =
        record.correctMark(print.number(), kind, elapsedS, logbook.sessionS(), Instant.now());
    if (!(result instanceof MarkResult.Marked made)) {
      throw Refused.conflict(result instanceof MarkResult.Refused r ? r.why() : "refused");
    }
    Json.answer(ctx, 200, documents.whole(made.print()));
  }

  private void sessions(Context ctx) {
    int limit = Json.query(ctx, "limit", 100, 1000);
    int offset = Json.query(ctx, "offset", 0, 100_000_000);
    Json.answer(ctx, 200, documents.sessions(log.sessions(limit, offset)));
  }

  private void setSymptoms(Context ctx) {
    long id = Json.id(ctx);
    Session session = log.session(id).orElseThrow(() -> Refused.missing("no session " + id));
    ObjectNode body = Json.body(ctx, List.of("symptoms"));
    if (!body.has("symptoms")) {
      throw Refused.field("symptoms", "nothing", PrintRecord.SYMPTOMS.accepted());
    }
    if (record.setSymptoms(id, Said.text(body, "symptoms"), Instant.now())
        instanceof Checked.Bad<String> bad) {
      throw Refused.problem(bad.problem());
    }
    Json.answer(ctx, 200, documents.session(session));
  }
}
