package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import trayward.host.link.AlarmHistory;
import trayward.host.link.AlarmView;
import trayward.host.link.TrayLink;

/** Alarms and the durable record of them as JSON. Safe on any thread. */
final class AlarmApi {

  /** All that the controller keeps: two files of 1000 lines. */
  private static final int MOST = 2000;

  private static final int OTHERWISE = 100;

  private final TrayLink link;

  AlarmApi(TrayLink link) {
    this.link = link;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/alarms", this::history);
    routes.post("/api/alarms/{cause}/silence", this::silence);
  }

  private void silence(Context ctx) {
    String cause = ctx.pathParam("cause");
    TrayApi.answer(link.silence(cause));
    Json.answer(ctx, 200, Json.MAPPER.createObjectNode().put("silenced", cause));
  }

  private void history(Context ctx) {
    int most = Json.query(ctx, "most", OTHERWISE, 1, MOST);
    AlarmHistory history =
        link.alarmHistory(most)
            .orElseThrow(() -> Refused.unavailable("the link does not carry the alarm record"));
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("alarm_record_ok", history.ok());
    node.put("skipped_lines", history.skipped());
    node.put("lost_steps", history.lost());
    ArrayNode steps = node.putArray("steps");
    history.steps().forEach(step -> steps.add(step(step)));
    Json.answer(ctx, 200, node);
  }

  private static ObjectNode step(AlarmHistory.Step step) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("name", step.name());
    node.put("state", step.state());
    node.put("at", step.at());
    Json.put(node, "uptime_s", step.uptimeS());
    node.put("detail", step.detail());
    node.put("priority", step.priority());
    node.put("priority_words", step.priorityWords());
    node.put("requirement", step.requirement());
    node.put("what", step.what());
    node.put("why", step.why());
    node.put("action", step.action());
    return node;
  }

  /** An alarm as it stands. */
  static ObjectNode alarm(AlarmView alarm) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("cause", alarm.cause());
    node.put("state", alarm.state());
    node.put("latched", alarm.latched());
    node.put("priority", alarm.priority());
    node.put("priority_words", alarm.priorityWords());
    node.put("requirement", alarm.requirement());
    node.put("meaning", alarm.meaning());
    node.put("why", alarm.why());
    node.put("action", alarm.action());
    return node;
  }
}
