package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.time.Instant;
import java.util.Locale;
import trayward.host.bath.Checked;
import trayward.host.report.EntriesJson;
import trayward.host.session.Print;
import trayward.host.session.PrintPicture;
import trayward.host.store.TrayLog;

/** Pictures of prints. Safe on any thread. */
final class PictureApi {

  private static final String TYPES = "image/jpeg or image/png";

  private final TrayLog log;

  PictureApi(TrayLog log) {
    this.log = log;
  }

  void routes(RoutesConfig routes) {
    routes.post("/api/prints/{id}/pictures", this::add);
    routes.get("/api/pictures/{id}", ctx -> show(ctx, false));
    routes.get("/api/pictures/{id}/small", ctx -> show(ctx, true));
    routes.delete("/api/pictures/{id}", this::takeBack);
  }

  /** Reads the body from the stream: the bound of every other request's body is far smaller. */
  private void add(Context ctx) throws IOException {
    Print print = PrintApi.known(ctx, log);
    String said = String.valueOf(ctx.contentType()).split(";", -1)[0].strip();
    String type = said.toLowerCase(Locale.ROOT);
    if (!type.equals("image/jpeg") && !type.equals("image/png")) {
      throw Refused.field("Content-Type", type.equals("null") ? "nothing" : type, TYPES);
    }
    Checked<PrintPicture> checked =
        log.pictures().add(print.number(), ctx.req().getInputStream(), Instant.now());
    if (checked instanceof Checked.Bad<PrintPicture> bad) {
      throw Refused.problem(bad.problem());
    }
    if (checked instanceof Checked.Good<PrintPicture> good) {
      ObjectNode node = Json.MAPPER.createObjectNode();
      EntriesJson.picture(node, good.value());
      Json.answer(ctx, 201, node);
    }
  }

  private PrintPicture known(Context ctx) {
    long id = Json.id(ctx);
    return log.archive().picture(id).orElseThrow(() -> Refused.missing("no picture " + id));
  }

  private void show(Context ctx, boolean small) throws IOException {
    PrintPicture picture = known(ctx);
    try {
      ctx.result(Files.newInputStream(log.archive().file(picture, small)));
    } catch (NoSuchFileException e) {
      throw Refused.missing("the file of picture " + picture.id() + " is gone");
    }
    ctx.contentType(small ? "image/jpeg" : picture.type());
    // A picture is shown as a picture and as nothing else, whatever is hidden in it.
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("Content-Security-Policy", "default-src 'none'");
    ctx.header("Cache-Control", "no-store");
  }

  private void takeBack(Context ctx) {
    PrintPicture picture = known(ctx);
    var unused = log.pictures().takeBack(picture.id(), Instant.now());
    Print print = log.print(picture.print()).orElseThrow(() -> Refused.missing("no such print"));
    Json.answer(ctx, 200, new PrintDocuments(log).whole(print));
  }
}
