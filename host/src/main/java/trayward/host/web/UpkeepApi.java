package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.stream.Collectors;
import trayward.host.link.TrayLink;
import trayward.host.link.UpkeepView;

/** The due dates of maintenance (SR-23). Safe on any thread. */
final class UpkeepApi {

  private final TrayLink link;

  UpkeepApi(TrayLink link) {
    this.link = link;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/upkeep", ctx -> Json.answer(ctx, 200, document(link.upkeep())));
    routes.post("/api/upkeep/{item}/done", this::done);
  }

  private void done(Context ctx) {
    String item = ctx.pathParam("item");
    UpkeepView now = link.upkeep();
    if (now.items().stream().noneMatch(i -> i.item().equals(item))) {
      String names =
          now.items().stream().map(UpkeepView.Item::item).collect(Collectors.joining(", "));
      throw Refused.missing("no " + item + " is looked after: there are " + names);
    }
    TrayApi.answer(link.upkeepDone(item));
    Json.answer(ctx, 200, document(link.upkeep()));
  }

  private static ObjectNode document(UpkeepView view) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("today", view.today());
    node.put("clock_set", view.clockSet());
    node.put("start_needs_confirmation", !view.startUnconfirmed().isEmpty());
    node.put("start_words", view.startUnconfirmed());
    ArrayNode items = node.putArray("items");
    for (UpkeepView.Item item : view.items()) {
      ObjectNode one = items.addObject();
      one.put("item", item.item());
      one.put("words", item.words());
      one.put("last_done", item.lastDone().isEmpty() ? null : item.lastDone());
      one.put("due", item.due());
      one.put("days_left", item.daysLeft());
      Json.put(one, "hours", item.hours());
      Json.put(one, "hours_due", item.hoursDue());
      one.put("overdue", item.overdue());
      one.put("reason", item.reason());
    }
    return node;
  }
}
