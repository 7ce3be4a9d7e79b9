package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import trayward.host.link.Command;
import trayward.host.link.LinkAnswer;
import trayward.host.link.TrayLink;
import trayward.host.web.guard.Entrance;

/** The part of the interface that speaks with the controller. Safe on any thread. */
final class TrayApi {

  private static final String FAR =
      "this page does not stand at the tray ([server] host_at_tray = false): press the tray's own ";

  private final TrayLink link;
  private final StatusJson status;
  private final StatusStream stream;
  private final Entrance entrance;
  private final boolean atTray;

  /**
   * The requests over a link.
   *
   * @param entrance says whether who listens is still logged in
   * @param atTray whether who asks stands at the tray, so that it may start, reset and show
   *     presence (SR-12, SR-13, SR-15)
   */
  TrayApi(
      TrayLink link, StatusJson status, StatusStream stream, Entrance entrance, boolean atTray) {
    this.link = link;
    this.status = status;
    this.stream = stream;
    this.entrance = entrance;
    this.atTray = atTray;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/status", this::status);
    routes.get("/api/stream", this::stream);
    routes.post("/api/commands/{command}", this::command);
    routes.put("/api/set-temperature", this::setTemperature);
    routes.get("/api/openapi.json", this::openApi);
    routes.get("/healthz", this::health);
  }

  private void status(Context ctx) {
    ObjectNode now =
        status.now().orElseThrow(() -> Refused.unavailable("the controller does not answer"));
    Json.answer(ctx, 200, now);
  }

  /** Server-sent events for whoever asks, also without the header that a browser sends. */
  private void stream(Context ctx) throws IOException {
    HttpServletResponse response = ctx.res();
    response.setStatus(200);
    response.setCharacterEncoding("UTF-8");
    response.setContentType("text/event-stream");
    response.setHeader("Cache-Control", "no-store");
    String token = LoginApi.token(ctx);
    ctx.future(() -> stream.join(response, () -> entrance.admits(token)));
  }

  private void command(Context ctx) {
    String word = ctx.pathParam("command");
    Command command =
        Command.of(word)
            .orElseThrow(
                () ->
                    Refused.missing(
                        "no command "
                            + word
                            + ": there are "
                            + Arrays.stream(Command.values())
                                .map(Command::word)
                                .collect(Collectors.joining(", "))));
    if (!atTray) {
      refuseFromAfar(command);
    }
    answer(command == Command.START ? link.start(confirmed(ctx)) : link.send(command));
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("command", word);
    node.put("accepted", true);
    link.latest().ifPresent(s -> node.put("state", s.state()));
    Json.answer(ctx, 200, node);
  }

  /** What only a person at the tray does (SR-12, SR-13, SR-15); stop is anybody's. */
  private static void refuseFromAfar(Command command) {
    switch (command) {
      case START -> throw Refused.conflict(FAR + "start button");
      case RESET -> throw Refused.conflict(FAR + "reset button");
      case PRESENCE -> throw Refused.conflict(FAR + "pedal or presence button");
      case STOP, ACKNOWLEDGE -> {}
    }
  }

  /**
   * A start may say {@code {"confirmed": true}}; whatever else is sent with a command is not read.
   */
  private static boolean confirmed(Context ctx) {
    ObjectNode body = Json.optionalBody(ctx, List.of("confirmed"));
    return body.has("confirmed") && Json.flag(body, "confirmed");
  }

  private void setTemperature(Context ctx) {
    ObjectNode body = Json.body(ctx, List.of("celsius"));
    double celsius = Json.number(body, "celsius", "a temperature in degrees Celsius");
    LinkAnswer answer = link.setTemperature(celsius);
    if (answer instanceof LinkAnswer.Refused refused) {
      throw Refused.field("celsius", Double.toString(celsius), refused.reason());
    }
    answer(answer);
    Json.answer(ctx, 200, Json.MAPPER.createObjectNode().put("celsius", celsius));
  }

  /** Turns an answer that is not {@code Done} into a problem. */
  static void answer(LinkAnswer answer) {
    if (answer instanceof LinkAnswer.Refused refused) {
      throw Refused.conflict(refused.reason());
    }
    if (answer instanceof LinkAnswer.ConfirmFirst first) {
      throw Refused.confirmFirst(first.reason());
    }
    if (answer instanceof LinkAnswer.NotDelivered not) {
      throw Refused.unavailable(not.why());
    }
  }

  private void openApi(Context ctx) throws IOException {
    try (InputStream in = TrayApi.class.getResourceAsStream("/trayward/openapi.json")) {
      if (in == null) {
        throw Refused.missing("the description is not in the archive");
      }
      ctx.contentType("application/json").result(in.readAllBytes());
    }
  }

  private void health(Context ctx) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    boolean alive = link.latest().isPresent();
    node.put("controller", alive);
    link.lateness()
        .ifPresent(
            l -> {
              ObjectNode late = node.putObject("scan_lateness");
              late.put("scans", l.scans());
              late.put("p50_ms", l.p50Ms());
              late.put("p999_ms", l.p999Ms());
              late.put("max_ms", l.maxMs());
            });
    Json.answer(ctx, alive ? 200 : 503, node);
  }
}
