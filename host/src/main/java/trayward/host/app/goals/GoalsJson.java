package trayward.host.app.goals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;

/** {@code goals.json}: every spread, and every tray with its figures. Stateless. */
final class GoalsJson {

  private static final ObjectMapper JSON = new ObjectMapper();

  private GoalsJson() {}

  static String of(Measured m) {
    ObjectNode node = JSON.createObjectNode();
    node.put("from_seed", m.fromSeed());
    node.put("trays", m.trays().size());
    node.put("goals", Measured.goals());
    node.put("goals_missed", m.missed().size());
    ArrayNode cases = node.putArray("cases");
    for (GoalCase in : GoalCase.values()) {
      ObjectNode one = cases.addObject();
      one.put("case", in.key());
      one.put("words", in.words());
      ArrayNode measures = one.putArray("measures");
      in.measures().forEach(measure -> measure(measures.addObject(), m, in, measure));
    }
    ArrayNode drawn = node.putArray("drawn");
    m.trays().forEach(tray -> tray(drawn.addObject(), tray));
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(node) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e); // a tree of numbers and words can always be written
    }
  }

  private static void measure(ObjectNode node, Measured m, GoalCase in, Measure measure) {
    node.put("measure", measure.key());
    node.put("words", measure.words());
    if (in.goal(measure).isPresent()) {
      node.put("goal", in.goal(measure).getAsDouble());
      node.put("met", m.met(in, measure));
    }
    for (Contender contender : Contender.values()) {
      Spread spread = m.spread(in, contender, measure);
      ObjectNode one = node.putObject(contender.key());
      put(one, "worst", spread.worst());
      put(one, "p90", spread.p90());
      put(one, "median", spread.median());
      one.put("worst_seed", spread.worstSeed());
      one.put("never", spread.never());
    }
  }

  private static void tray(ObjectNode node, TrayFigures tray) {
    node.put("seed", tray.seed());
    draw(node.putObject("plate_probe"), TrayDraw.of(tray.seed(), true));
    draw(node.putObject("no_plate_probe"), TrayDraw.of(tray.seed(), false));
    ObjectNode figures = node.putObject("figures");
    tray.figures()
        .forEach(
            (in, contenders) -> {
              ObjectNode one = figures.putObject(in.key());
              contenders.forEach(
                  (contender, values) -> {
                    ObjectNode all = one.putObject(contender.key());
                    values.values().forEach((measure, value) -> put(all, measure.key(), value));
                  });
            });
  }

  private static void draw(ObjectNode node, TrayDraw draw) {
    draw.named().forEach((name, value) -> put(node, name, value));
  }

  /** What never came to an end is null. */
  private static void put(ObjectNode node, String key, double value) {
    if (Double.isFinite(value)) {
      node.put(key, Double.parseDouble(String.format(Locale.ROOT, "%.5f", value)));
    } else {
      node.putNull(key);
    }
  }
}
