package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import trayward.host.bath.Checked;
import trayward.host.report.plan.PlanAnswer;
import trayward.host.report.plan.PlanJson;
import trayward.host.report.plan.PlanOption;
import trayward.host.report.plan.Planner;
import trayward.host.report.plan.Planners;

/** The planners, as the command line has them. Stateless; safe on any thread. */
final class PlanApi {

  void routes(RoutesConfig routes) {
    routes.get("/api/plan", PlanApi::list);
    routes.get("/api/plan/{planner}", PlanApi::plan);
  }

  /** All planners and what each may be told, so that a page can ask. */
  private static void list(Context ctx) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    for (Planner planner : Planners.all()) {
      ObjectNode one = list.addObject().put("name", planner.name());
      one.put("description", planner.description());
      ArrayNode options = one.putArray("options");
      planner.options().forEach(option -> option(options.addObject(), option));
    }
    Json.answer(ctx, 200, list);
  }

  private static void option(ObjectNode node, PlanOption option) {
    node.put("name", option.name()).put("words", option.words()).put("unit", option.unit());
    node.put("kind", option.kind().name().toLowerCase(Locale.ROOT));
    node.put("accepted", option.accepted()).put("otherwise", option.otherwise());
    node.put("required", option.required());
    ArrayNode choices = node.putArray("choices");
    option.choices().forEach(choices::add);
  }

  private static void plan(Context ctx) {
    String name = ctx.pathParam("planner");
    Planner planner =
        Planners.of(name).orElseThrow(() -> Refused.missing("no planner " + shortened(name)));
    Map<String, String> told = new LinkedHashMap<>();
    ctx.queryParamMap()
        .forEach(
            (option, values) -> {
              if (values.size() != 1) {
                throw Refused.field(shortened(option), "more than one", "one value");
              }
              // A plus in a query reads as a space, and no option takes spaces: 1+7 stays 1+7.
              told.put(option, values.get(0).replace(' ', '+'));
            });
    Checked<PlanAnswer> answer = planner.answer(told);
    if (answer instanceof Checked.Bad<PlanAnswer> bad) {
      throw Refused.problem(bad.problem());
    }
    Json.answer(ctx, 200, PlanJson.node(((Checked.Good<PlanAnswer>) answer).value()));
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "…";
  }
}
