package trayward.host.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import trayward.host.session.Correction;
import trayward.host.session.PrintBath;
import trayward.host.session.PrintEntries;
import trayward.host.session.PrintField;
import trayward.host.session.PrintPicture;
import trayward.host.session.PrintStep;

/** What was said of a print as JSON, the same in requests and exports. Stateless. */
public final class EntriesJson {

  private EntriesJson() {}

  /** Puts {@code record}, {@code steps}, {@code pictures}, {@code history} and {@code bath}. */
  public static void put(ObjectNode node, PrintEntries entries) {
    record(node, entries.fields());
    ArrayNode steps = node.putArray("steps");
    entries.steps().forEach(step -> step(steps.addObject(), step));
    ArrayNode pictures = node.putArray("pictures");
    entries.pictures().forEach(picture -> picture(pictures.addObject(), picture));
    history(node, entries.history());
    entries.bath().ifPresent(bath -> bath(node.putObject("bath"), bath));
  }

  private static void bath(ObjectNode node, PrintBath bath) {
    node.put("bath", bath.bathId());
    node.put("litres", bath.litres());
    node.put("strength", bath.strength());
    node.put("bromide_g_per_l", bath.bromideGPerL());
    node.put("bromide_give_or_take_g_per_l", 2 * bath.bromideDoubtGPerL());
    node.put("sulfite_g_per_l", bath.sulfiteGPerL());
    node.put("sulfite_give_or_take_g_per_l", 2 * bath.sulfiteDoubtGPerL());
    node.put("area_m2_per_l", bath.areaM2PerL());
    node.put("hours_hot", bath.hotS() / 3600);
  }

  /** Puts {@code record}: what the fields say, numbers as numbers. */
  public static void record(ObjectNode node, Map<PrintField, String> fields) {
    ObjectNode record = node.putObject("record");
    fields.forEach(
        (field, value) -> {
          if (field.number()) {
            record.put(field.word(), new BigDecimal(value));
          } else {
            record.put(field.word(), value);
          }
        });
  }

  /** Fills in a step. */
  public static void step(ObjectNode node, PrintStep step) {
    node.put("n", step.n()).put("kind", step.kind().word());
    if (step.seconds().isPresent()) {
      node.put("seconds", step.seconds().getAsDouble());
    } else {
      node.putNull("seconds");
    }
    node.put("dilution", step.dilution()).put("what", step.what());
    node.put("at", step.wall().toString());
  }

  /** Fills in a picture. */
  public static void picture(ObjectNode node, PrintPicture picture) {
    node.put("id", picture.id()).put("type", picture.type()).put("file", picture.file());
    node.put("width", picture.width()).put("height", picture.height());
    node.put("bytes", picture.bytes()).put("at", picture.wall().toString());
  }

  /** Puts {@code history}: what stood there before, oldest first. */
  public static void history(ObjectNode node, List<Correction> corrections) {
    ArrayNode history = node.putArray("history");
    for (Correction c : corrections) {
      ObjectNode one = history.addObject();
      one.put("at", c.wall().toString()).put("field", c.field());
      one.put("was", c.was()).put("became", c.became());
    }
  }
}
