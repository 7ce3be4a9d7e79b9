package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import trayward.host.link.TrayLink;

/** The one-time calibration of a tray with a measured litre. Safe on any thread. */
final class TrayCalibrationApi {

  private static final String LITRES = "litres";

  private final TrayLink link;

  TrayCalibrationApi(TrayLink link) {
    this.link = link;
  }

  void routes(RoutesConfig routes) {
    routes.post("/api/tray/calibration", this::calibrate);
  }

  private void calibrate(Context ctx) {
    ObjectNode body = Json.body(ctx, List.of(LITRES));
    double litres = Json.number(body, LITRES, "litres measured into the tray, 0.05 to 20");
    if (!(litres >= 0.05 && litres <= 20)) {
      throw Refused.field(LITRES, Double.toString(litres), "0.05 to 20 L");
    }
    TrayLink.TrayCalibrated answer = link.calibrateTray(litres);
    if (!answer.taken()) {
      throw Refused.conflict(answer.words());
    }
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put(LITRES, litres);
    node.put("words", answer.words());
    Json.answer(ctx, 200, node);
  }
}
