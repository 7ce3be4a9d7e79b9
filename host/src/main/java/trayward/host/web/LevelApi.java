package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.OptionalDouble;
import trayward.host.link.LinkAnswer;
import trayward.host.link.TrayLink;

/** What a person says of the liquid in the tray (SR-28). Safe on any thread. */
final class LevelApi {

  private final TrayLink link;

  LevelApi(TrayLink link) {
    this.link = link;
  }

  void routes(RoutesConfig routes) {
    routes.post("/api/commands/confirm-level", this::confirm);
    routes.post("/api/top-ups", this::topUp);
  }

  private void confirm(Context ctx) {
    ObjectNode body = Json.optionalBody(ctx, List.of("litres"));
    OptionalDouble litres =
        body.has("litres")
            ? OptionalDouble.of(Json.number(body, "litres", "litres in the tray"))
            : OptionalDouble.empty();
    answer(link.confirmLevel(litres), litres.isPresent() ? litres.getAsDouble() : Double.NaN);
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("command", "confirm-level");
    node.put("accepted", true);
    link.latest().ifPresent(s -> node.put("state", s.state()));
    Json.answer(ctx, 200, node);
  }

  private void topUp(Context ctx) {
    ObjectNode body = Json.body(ctx, List.of("litres"));
    double litres = Json.number(body, "litres", "litres poured in");
    answer(link.topUp(litres), litres);
    Json.answer(ctx, 200, Json.MAPPER.createObjectNode().put("litres", litres));
  }

  private static void answer(LinkAnswer answer, double litres) {
    if (answer instanceof LinkAnswer.Refused refused) {
      throw Refused.field("litres", Double.toString(litres), refused.reason());
    }
    TrayApi.answer(answer);
  }
}
