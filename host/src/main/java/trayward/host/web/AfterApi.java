package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import trayward.host.exposure.Safelight;
import trayward.host.forecast.Advice;
import trayward.host.forecast.Forecast;
import trayward.host.report.BookJson;
import trayward.host.session.FieldRule;
import trayward.host.session.ShelfItem;
import trayward.host.session.ShelfKind;
import trayward.host.session.WorkingBath;
import trayward.host.store.Shelf;

/** The work around the developer: the other baths, the light, what to change next. Any thread. */
final class AfterApi {

  /** A test is done again after a year where nothing else is told: common practice. */
  private static final double AGAIN_DAYS = 365;

  /** From box to developer where nothing else is told, min: judgement. */
  private static final double HANDLING_MIN = 2;

  private final Shelf shelf;
  private final Logbook logbook;
  private final Clock clock;

  AfterApi(Shelf shelf, Logbook logbook, Clock clock) {
    this.shelf = shelf;
    this.logbook = logbook;
    this.clock = clock;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/working-baths", this::workingBaths);
    routes.get("/api/lights", this::lights);
    routes.get("/api/advice", this::advice);
  }

  private LocalDate today() {
    return LocalDate.now(clock);
  }

  private void workingBaths(Context ctx) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    for (WorkingBath bath : shelf.workingBaths(clock.getZone())) {
      ObjectNode one = list.addObject();
      BookJson.item(one, bath.item());
      one.put("made", bath.made().toString()).put("age_days", bath.ageDays(today()));
      one.put("prints", bath.through().prints());
      Json.put(one, "area_m2", bath.through().areaM2());
      one.put("unsized", bath.through().unsized());
      Json.put(one, "used", bath.used());
      Json.put(one, "area_since_test_m2", bath.sinceTest().areaM2());
      one.put("words", bath.words(today()));
      ArrayNode due = one.putArray("due");
      bath.due(today()).forEach(due::add);
      one.put("disposal", "by local rules; never into a drain that leads to open water");
    }
    Json.answer(ctx, 200, list);
  }

  private void lights(Context ctx) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    shelf.all().stream()
        .filter(item -> item.kind() == ShelfKind.LIGHT)
        .forEach(item -> light(list.addObject(), item));
    Json.answer(ctx, 200, list);
  }

  private void light(ObjectNode node, ShelfItem item) {
    BookJson.item(node, item);
    Optional<LocalDate> tested = item.text("tested").flatMap(FieldRule::dayOf);
    double again = item.number("again_days", AGAIN_DAYS);
    boolean due = tested.isEmpty() || ChronoUnit.DAYS.between(tested.get(), today()) > again;
    node.put("due", due);
    tested.ifPresent(day -> node.put("due_on", day.plusDays((long) again).toString()));
    double clean = item.number("clean_min", 0);
    double fogged = item.number("fogged_min", 0);
    if (!(clean > 0) || !(fogged >= clean)) {
      node.put("words", "not tested: no time can be told for it");
      return;
    }
    double longest = new Safelight(clean, fogged).longestMin();
    Json.put(node, "longest_min", longest);
    node.put("words", words(item, longest));
  }

  private String words(ShelfItem item, double longestMin) {
    String good =
        String.format(
            Locale.ROOT, "at most %.1f min from box to stop bath, by its test", longestMin);
    Optional<Forecast> pull = logbook.outlook().flatMap(Outlook::pull);
    if (pull.isPresent() && pull.get() instanceof Forecast.Window w) {
      double minutes = item.number("handling_min", HANDLING_MIN) + w.ninetyFive().high() / 60;
      return String.format(
          Locale.ROOT,
          "%s; the next print may take %.1f min%s",
          good,
          minutes,
          minutes > longestMin ? ": too long for it, weaken it or cover the tray" : "");
    }
    return good;
  }

  private void advice(Context ctx) {
    String all = Arrays.stream(Advice.values()).map(Advice::word).collect(Collectors.joining(", "));
    String verdict = Optional.ofNullable(ctx.queryParam("verdict")).orElse("nothing");
    Advice advice =
        Advice.of(verdict).orElseThrow(() -> Refused.field("verdict", verdict, "one of " + all));
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("verdict", advice.word());
    node.put("basis", "common practice of the trade, from memory; one change at a time");
    ArrayNode options = node.putArray("options");
    for (Advice.Option option : advice.options()) {
      ObjectNode one = options.addObject();
      one.put("what", option.what()).put("how", option.how());
      one.put("side_effect", option.sideEffect());
      logbook
          .outlook()
          .flatMap(o -> Advice.ownPrints(option, o.forecaster(), o.bathC()))
          .ifPresent(words -> one.put("own_prints", words));
    }
    Json.answer(ctx, 200, node);
  }
}
