package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.stream.Collectors;
import trayward.host.link.ProbesView;
import trayward.host.link.TrayLink;

/** The probes, and comparing one with a known temperature. Safe on any thread. */
final class ProbeApi {

  private static final String POINT = "point";
  private static final String ICE = "ice";
  private static final String REFERENCE = "reference";
  private static final String CELSIUS = "celsius";
  private static final String STATED = "uncertainty_k";

  private final TrayLink link;

  ProbeApi(TrayLink link) {
    this.link = link;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/probes", ctx -> Json.answer(ctx, 200, document(link.probes())));
    routes.post("/api/probes/{role}/calibration", this::calibrate);
    routes.delete("/api/probes/{role}/calibration", this::forget);
  }

  private void calibrate(Context ctx) {
    ProbesView view = link.probes();
    String role = role(ctx, view);
    ObjectNode body = Json.body(ctx, List.of(POINT, CELSIUS, STATED));
    String point = Json.text(body, POINT, "ice or reference");
    switch (point) {
      case ICE -> {
        none(body, CELSIUS);
        none(body, STATED);
        TrayApi.answer(link.calibrateIce(role));
      }
      case REFERENCE -> {
        double celsius = within(body, CELSIUS, view.referenceMinC(), view.referenceMaxC(), " °C");
        double stated = within(body, STATED, view.statedMinK(), view.statedMaxK(), " K, k = 2");
        TrayApi.answer(link.calibrateReference(role, celsius, stated));
      }
      default -> throw Refused.field(POINT, point, "ice or reference");
    }
    Json.answer(ctx, 200, document(link.probes()));
  }

  private void forget(Context ctx) {
    TrayApi.answer(link.forgetCalibration(role(ctx, link.probes())));
    Json.answer(ctx, 200, document(link.probes()));
  }

  private static String role(Context ctx, ProbesView view) {
    String role = ctx.pathParam("role");
    List<String> fitted = view.probes().stream().map(ProbesView.Probe::role).toList();
    if (!fitted.contains(role)) {
      String names = fitted.isEmpty() ? "none" : String.join(", ", fitted);
      throw Refused.missing("no probe " + role + " is fitted: there are " + names);
    }
    return role;
  }

  /** Melting ice has its temperature; another one beside it would be a mistake. */
  private static void none(ObjectNode body, String field) {
    if (body.has(field)) {
      throw Refused.field(field, body.path(field).toString(), "nothing for an ice point");
    }
  }

  private static double within(ObjectNode body, String field, double min, double max, String unit) {
    String accepted = plain(min) + " to " + plain(max) + unit;
    double value = Json.number(body, field, accepted);
    if (!(value >= min && value <= max)) {
      throw Refused.field(field, plain(value), accepted);
    }
    return value;
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  private static ObjectNode document(ProbesView view) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("calibration_record_ok", view.recordReadable());
    node.put("calibration_taken_now", view.rests());
    ArrayNode probes = node.putArray("probes");
    view.probes().forEach(probe -> probes.add(probe(probe)));
    return node;
  }

  private static ObjectNode probe(ProbesView.Probe probe) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("role", probe.role());
    node.put("probe", probe.probe());
    node.put("reading_class", probe.readingClass());
    Json.put(node, "raw_c", probe.rawC());
    Json.put(node, "corrected_c", probe.correctedC());
    node.put("calibrated", probe.calibrated());
    Json.put(node, "offset_k", probe.offsetK());
    Json.put(node, "slope", probe.slope());
    String date =
        probe.points().stream().map(ProbesView.ComparedAt::date).max(String::compareTo).orElse("");
    node.put("date", date.isEmpty() ? null : date);
    Json.put(node, "uncertainty_k", probe.uncertaintyK());
    Json.put(node, "coverage_factor", probe.coverage());
    node.put(
        "uncertainty_words",
        probe.calibrated()
            ? "expanded uncertainty of the corrected reading, k = 2"
            : "limits of the data sheet, as bought");
    node.put("record_of_another_probe", probe.ofAnother());
    Json.put(node, "stood_s", probe.stoodS());
    Json.put(node, "scatter_k", probe.scatterK());
    node.put("not_still", probe.notStill().isEmpty() ? null : probe.notStill());
    node.putArray("points")
        .addAll(probe.points().stream().map(ProbeApi::point).collect(Collectors.toList()));
    return node;
  }

  private static ObjectNode point(ProbesView.ComparedAt at) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put(POINT, at.point());
    Json.put(node, CELSIUS, at.celsius());
    Json.put(node, STATED, at.statedK());
    Json.put(node, "raw_c", at.rawC());
    Json.put(node, "scatter_k", at.scatterK());
    node.put("date", at.date().isEmpty() ? null : at.date());
    return node;
  }
}
