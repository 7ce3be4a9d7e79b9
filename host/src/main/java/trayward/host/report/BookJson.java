package trayward.host.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.OptionalDouble;
import trayward.host.bath.BookEntry;
import trayward.host.session.FieldRule;
import trayward.host.session.ShelfItem;

/** Lines of the bath book and things of the shelf as JSON, in requests and exports. Stateless. */
public final class BookJson {

  private BookJson() {}

  /** Fills in a line of a book. */
  public static void entry(ObjectNode node, BookEntry entry) {
    node.put("id", entry.id());
    node.put("bath", entry.bathId());
    node.put("at", entry.wall().toString());
    put(node, "session_s", OptionalDouble.of(entry.sessionS()));
    node.put("kind", entry.kind().word());
    node.put("what", entry.what());
    node.put("dilution", entry.dilution());
    node.put("millilitres", entry.millilitres());
    put(node, "celsius", entry.celsius());
    entry.other().ifPresent(other -> node.put(otherIs(entry), other));
    if (entry.doubtMl() > 0) {
      node.put("standard_uncertainty_ml", entry.doubtMl());
    }
    if (entry.hotS() > 0) {
      node.put("hot_s", entry.hotS());
    }
  }

  private static String otherIs(BookEntry entry) {
    return switch (entry.kind()) {
      case CARRIED_OVER -> "from";
      case TAKEN_OVER -> "to";
      case PRINTED -> "print";
      case POURED, POURED_AWAY, LEVEL_READ, EVAPORATED -> "other";
    };
  }

  private static void put(ObjectNode node, String field, OptionalDouble value) {
    if (value.isPresent() && Double.isFinite(value.getAsDouble())) {
      node.put(field, value.getAsDouble());
    } else {
      node.putNull(field);
    }
  }

  /** Fills in a thing of the shelf, numbers as numbers. */
  public static void item(ObjectNode node, ShelfItem item) {
    node.put("id", item.id()).put("kind", item.kind().word()).put("name", item.name());
    ObjectNode fields = node.putObject("fields");
    for (FieldRule rule : item.kind().fields()) {
      item.text(rule.name())
          .ifPresent(
              text -> {
                if (rule.kind() == FieldRule.Kind.NUMBER) {
                  fields.put(rule.name(), new BigDecimal(text));
                } else {
                  fields.put(rule.name(), text);
                }
              });
    }
  }
}
