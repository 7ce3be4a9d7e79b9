package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import trayward.host.bath.BathContents;
import trayward.host.bath.Restore;
import trayward.host.exposure.Reciprocity;
import trayward.host.exposure.Rescale;
import trayward.host.exposure.Stops;
import trayward.host.link.LinkAnswer;
import trayward.host.link.TrayLink;
import trayward.host.session.FieldRule;
import trayward.host.session.Print;
import trayward.host.session.PrintBath;
import trayward.host.session.PrintField;
import trayward.host.session.PrintSummary;
import trayward.host.session.ShelfItem;
import trayward.host.session.ShelfKind;
import trayward.host.session.TraceSample;
import trayward.host.store.TrayLog;

/** A print made again: its temperature, its bath, its exposure in another size. Any thread. */
final class RepeatApi {

  /** A bath this near to what was set was held there, K. */
  private static final double HELD_K = 1;

  private final TrayLog log;
  private final TrayLink link;
  private final Guide guide;

  RepeatApi(TrayLog log, TrayLink link, Guide guide) {
    this.log = log;
    this.link = link;
    this.guide = guide;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/prints/{id}/repeat", ctx -> Json.answer(ctx, 200, plan(ctx, asked(ctx))));
    routes.post("/api/prints/{id}/repeat", this::repeat);
    routes.delete("/api/guide", this::noGuide);
  }

  /** Another size: a magnification, or the width of the new print; empty for the same. */
  private record Asked(OptionalDouble magnification, OptionalDouble widthMm) {}

  private static Asked asked(Context ctx) {
    return new Asked(query(ctx, PrintField.MAGNIFICATION), query(ctx, PrintField.WIDTH_MM));
  }

  private static OptionalDouble query(Context ctx, PrintField field) {
    String text = ctx.queryParam(field.word());
    return text == null || text.isBlank() ? OptionalDouble.empty() : number(field, text.strip());
  }

  private static OptionalDouble number(PrintField field, String text) {
    if (!field.rule().takes(text)) {
      throw Refused.field(field.word(), text, field.rule().accepted());
    }
    return OptionalDouble.of(FieldRule.numberOf(text));
  }

  private void repeat(Context ctx) {
    ObjectNode body = Json.optionalBody(ctx, List.of("magnification", "width_mm"));
    Asked asked =
        new Asked(number(body, PrintField.MAGNIFICATION), number(body, PrintField.WIDTH_MM));
    ObjectNode plan = plan(ctx, asked);
    if (plan.hasNonNull("set_c")) {
      LinkAnswer answer = link.setTemperature(plan.get("set_c").doubleValue());
      plan.put(
          "set_temperature",
          answer instanceof LinkAnswer.Refused refused
              ? "refused: " + refused.reason()
              : answer instanceof LinkAnswer.Done ? "set" : "not delivered");
    }
    guide.follow(Json.id(ctx));
    Json.answer(ctx, 200, plan);
  }

  private static OptionalDouble number(ObjectNode body, PrintField field) {
    return body.hasNonNull(field.word())
        ? number(field, body.get(field.word()).asText())
        : OptionalDouble.empty();
  }

  private void noGuide(Context ctx) {
    guide.none();
    ctx.status(204);
  }

  private ObjectNode plan(Context ctx, Asked asked) {
    Print print = PrintApi.known(ctx, log);
    Map<PrintField, String> said =
        log.archive().fields(List.of(print)).getOrDefault(print.number(), Map.of());
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("print", print.number());
    PrintSummary summary = log.archive().summaries(List.of(print)).get(0);
    Json.put(node, "set_c", setC(print, summary.meanC()));
    Json.put(node, "mean_c", summary.meanC());
    Json.put(node, "emergence_s", summary.emergenceS());
    Json.put(node, "pull_s", summary.pullS());
    bath(node, log.baths().atPrint(print.number()), log.baths().now());
    Optional<ShelfItem> paper =
        Optional.ofNullable(said.get(PrintField.PAPER))
            .flatMap(name -> log.shelf().item(ShelfKind.PAPER, name));
    exposure(node, said, paper, asked);
    paper
        .flatMap(p -> p.text("pull_early_s"))
        .ifPresent(s -> node.put("pull_early_s", FieldRule.numberOf(s)));
    return node;
  }

  /** What was set when it went in; where the bath was elsewhere its mean, to half a degree. */
  private OptionalDouble setC(Print print, OptionalDouble mean) {
    double set =
        log.traceOf(print).stream()
            .mapToDouble(TraceSample::setC)
            .filter(c -> !Double.isNaN(c))
            .findFirst()
            .orElse(Double.NaN);
    if (mean.isEmpty() || Math.abs(set - mean.getAsDouble()) <= HELD_K) {
      return Double.isNaN(set) ? OptionalDouble.empty() : OptionalDouble.of(set);
    }
    return OptionalDouble.of(Math.rint(2 * mean.getAsDouble()) / 2);
  }

  private static void bath(ObjectNode node, Optional<PrintBath> then, Optional<BathContents> now) {
    ObjectNode bath = node.putObject("bath");
    if (then.isEmpty() || now.isEmpty()) {
      bath.put("words", then.isEmpty() ? "its bath was not in the book" : "no bath is in the tray");
      return;
    }
    PrintBath was = then.get();
    BathContents is = now.get();
    ArrayNode differences = bath.putArray("differences");
    difference(differences, "litres", "L", was.litres(), is.litres().value());
    difference(differences, "strength", "share", was.strength(), is.strength().value());
    difference(differences, "bromide", "g/L", was.bromideGPerL(), is.bromideGPerL().value());
    difference(differences, "sulfite", "g/L", was.sulfiteGPerL(), is.sulfiteGPerL().value());
    difference(differences, "area", "m²/L", was.areaM2PerL(), is.areaM2PerL());
    Json.put(
        bath,
        "bromide_give_or_take_g_per_l",
        2 * Math.hypot(was.bromideDoubtGPerL(), is.bromideGPerL().standard()));
    Json.put(
        bath,
        "sulfite_give_or_take_g_per_l",
        2 * Math.hypot(was.sulfiteDoubtGPerL(), is.sulfiteGPerL().standard()));
    Restore restore = Restore.of(is, was.bromideGPerL(), was.sulfiteGPerL());
    ArrayNode additions = bath.putArray("additions");
    addition(additions, "potassium bromide", restore.bromideMl());
    addition(additions, "sodium sulfite", restore.sulfiteMl());
    ArrayNode tooMuch = bath.putArray("too_much");
    restore.tooMuch().forEach(tooMuch::add);
  }

  private static void difference(
      ArrayNode list, String what, String unit, double then, double now) {
    ObjectNode one = list.addObject().put("what", what).put("unit", unit);
    Json.put(one, "then", then);
    Json.put(one, "now", now);
  }

  private static void addition(ArrayNode list, String salt, double ml) {
    if (ml > 0) {
      ObjectNode one = list.addObject();
      one.put("what", salt + " " + Restore.PERCENT + " %");
      one.put("millilitres", Math.round(ml * 10) / 10.0);
    }
  }

  private static void exposure(
      ObjectNode node, Map<PrintField, String> said, Optional<ShelfItem> paper, Asked asked) {
    OptionalDouble base = told(said, PrintField.BASE_EXPOSURE_S);
    if (base.isEmpty()) {
      return;
    }
    ObjectNode exposure = node.putObject("exposure");
    double stops = told(said, PrintField.STOPS_OVER).orElse(0);
    OptionalDouble from = told(said, PrintField.MAGNIFICATION);
    OptionalDouble to = newMagnification(said, from, asked);
    double p = paper.map(item -> item.number("reciprocity_p", 1)).orElse(1.0);
    double baseS = base.getAsDouble();
    if (from.isPresent() && to.isPresent()) {
      Rescale rescale = new Rescale(from.getAsDouble(), to.getAsDouble());
      baseS = rescale.seconds(baseS, new Reciprocity(p));
      Json.put(exposure, "factor", rescale.factor());
      Json.put(exposure, "magnification", to);
    }
    Json.put(exposure, "base_s", baseS);
    Json.put(exposure, "stops_over", stops);
    Json.put(exposure, "seconds", Stops.seconds(baseS, stops));
    Json.put(exposure, "reciprocity_p", p);
    told(said, PrintField.APERTURE).ifPresent(f -> Json.put(exposure, "aperture", f));
    exposure.put("words", words(baseS, stops, from, to, asked));
  }

  private static String words(
      double baseS, double stops, OptionalDouble from, OptionalDouble to, Asked asked) {
    String seconds =
        String.format(
            Locale.ROOT,
            "%.1f s and %+.2f stops: %.1f s",
            baseS,
            stops,
            Stops.seconds(baseS, stops));
    boolean another = asked.magnification().isPresent() || asked.widthMm().isPresent();
    if (another && to.isEmpty()) {
      return seconds + "; the old size is not told, so nothing is rescaled";
    }
    return to.isPresent() && from.isPresent()
        ? seconds + "; rescaled as (m + 1)², test it with a strip"
        : seconds;
  }

  private static OptionalDouble newMagnification(
      Map<PrintField, String> said, OptionalDouble from, Asked asked) {
    if (from.isEmpty() || asked.magnification().isPresent()) {
      return from.isEmpty() ? OptionalDouble.empty() : asked.magnification();
    }
    OptionalDouble width = told(said, PrintField.WIDTH_MM);
    return width.isPresent() && asked.widthMm().isPresent()
        ? OptionalDouble.of(
            from.getAsDouble() * asked.widthMm().getAsDouble() / width.getAsDouble())
        : OptionalDouble.empty();
  }

  private static OptionalDouble told(Map<PrintField, String> said, PrintField field) {
    String text = said.get(field);
    return text == null ? OptionalDouble.empty() : OptionalDouble.of(FieldRule.numberOf(text));
  }
}
