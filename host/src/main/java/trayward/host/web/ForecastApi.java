package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import trayward.host.forecast.Coefficient;
import trayward.host.forecast.Conditions;
import trayward.host.forecast.Features;
import trayward.host.forecast.Forecast;
import trayward.host.forecast.Interval;
import trayward.host.forecast.Sureness;

/** When to start watching, and how sure that is. Any thread. */
final class ForecastApi {

  private final Logbook logbook;

  ForecastApi(Logbook logbook) {
    this.logbook = logbook;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/forecast", this::forecast);
  }

  private void forecast(Context ctx) {
    Outlook outlook =
        logbook
            .outlook()
            .orElseThrow(() -> Refused.unavailable("nothing was heard of the tray yet"));
    String celsius = ctx.queryParam("celsius");
    Json.answer(ctx, 200, celsius == null ? whole(outlook) : whole(at(outlook, celsius(celsius))));
  }

  private static double celsius(String text) {
    double value = text.matches("[0-9]{1,3}(\\.[0-9]{1,3})?") ? Double.parseDouble(text) : -1;
    if (!(value >= 5 && value <= 60)) {
      throw Refused.field("celsius", text, "5 to 60 °C");
    }
    return value;
  }

  /** What a next print would do at another temperature. */
  private static Outlook at(Outlook o, double bathC) {
    Conditions conditions = new Conditions(bathC, o.features());
    return new Outlook(
        java.util.Optional.empty(),
        0,
        o.forecaster().emergence(conditions),
        java.util.Optional.of(o.forecaster().pull(conditions)),
        bathC,
        o.features(),
        o.paper(),
        o.forecaster());
  }

  /** What the dark page shows: a few words and a window. */
  static ObjectNode brief(Outlook o) {
    ObjectNode node = moment(o.next());
    o.print().ifPresent(number -> node.put("print", number));
    return node;
  }

  private static ObjectNode whole(Outlook o) {
    ObjectNode node = moment(o.next());
    if (o.print().isPresent()) {
      node.put("print", o.print().get());
      Json.put(node, "elapsed_s", o.elapsedS());
    } else {
      node.putNull("print");
    }
    o.pull().ifPresent(pull -> node.set("pull", moment(pull)));
    Json.put(node, "bath_c", o.bathC());
    node.set("conditions", features(o.features()));
    node.put("paper", o.paper().orElse(null));
    Sureness sure = o.forecaster().sureness();
    node.putObject("sureness")
        .put("forecasts", sure.forecasts())
        .put("held", sure.held())
        .put("words", sure.words());
    ObjectNode law = node.putObject("law");
    law.set("emergence", coefficients(o.forecaster().emergenceCoefficients()));
    law.set("pull", coefficients(o.forecaster().pullCoefficients()));
    o.forecaster()
        .plain()
        .ifPresent(
            plain -> {
              law.set("emergence_unshrunk", coefficients(plain.coefficients()));
              Json.put(law, "emergence_unshrunk_residual_sd", plain.residualSd());
            });
    return node;
  }

  private static ArrayNode coefficients(List<Coefficient> coefficients) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    for (Coefficient c : coefficients) {
      ObjectNode one = list.addObject();
      one.put("term", c.term().name().toLowerCase(Locale.ROOT));
      one.put("word", c.term().word()).put("unit", c.term().unit());
      Json.put(one, "value", c.value());
      Json.put(one, "standard_error", c.standardError());
    }
    return list;
  }

  private static ObjectNode features(Features f) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    put(node, "area_m2_per_l", f.exhaustionM2PerL());
    put(node, "bromide_g_per_l", f.bromideGPerL());
    put(node, "strength", f.strengthShare());
    put(node, "stops_over", f.stopsOver());
    return node;
  }

  private static void put(ObjectNode node, String field, OptionalDouble value) {
    Json.put(node, field, value);
  }

  private static ObjectNode moment(Forecast forecast) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("words", forecast.words());
    if (forecast instanceof Forecast.Refused refused) {
      node.put("refused", refused.reason());
      return node;
    }
    if (forecast instanceof Forecast.Window w) {
      node.put("moment", w.moment().word());
      node.put("start_watching", w.startWatching());
      node.put("how_sure", w.howSure());
      Json.put(node, "expected_s", w.expectedS());
      node.set("window_80_s", interval(w.eighty()));
      node.set("window_95_s", interval(w.ninetyFive()));
      node.put("open", w.open());
      node.put("prints", w.prints());
      ArrayNode caveats = node.putArray("caveats");
      w.caveats().forEach(caveats::add);
    }
    return node;
  }

  private static ArrayNode interval(Interval interval) {
    ArrayNode two = Json.MAPPER.createArrayNode();
    two.add(Math.round(interval.low() * 10) / 10.0).add(Math.round(interval.high() * 10) / 10.0);
    return two;
  }
}
