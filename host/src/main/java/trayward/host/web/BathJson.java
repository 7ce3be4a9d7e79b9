package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.TreeMap;
import java.util.function.LongFunction;
import trayward.host.bath.Amount;
import trayward.host.bath.Balance;
import trayward.host.bath.BathContents;
import trayward.host.bath.BookEntry;
import trayward.host.report.BookJson;
import trayward.host.report.EntriesJson;
import trayward.host.store.BathBook;

/**
 * Baths, what is in them, and their books as JSON. Give or take is with a coverage factor of 2.
 * Stateless.
 */
final class BathJson {

  private BathJson() {}

  /**
   * A bath with what it holds and what a person entered; {@code names} finds other baths' names.
   */
  static ObjectNode bath(BathBook.Whole whole, Instant now, LongFunction<String> names) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("id", whole.bath().id());
    node.put("made", whole.bath().madeWall().toString());
    node.put("name", whole.bath().name());
    Json.put(node, "litres", whole.bath().litres());
    Json.put(node, "litres_now", whole.now().litres().value());
    node.put("note", whole.bath().note());
    node.put("in_tray", whole.inTray());
    Json.put(node, "age_h", Duration.between(whole.bath().madeWall(), now).toMinutes() / 60.0);
    node.set("contents", contents(whole.now(), names));
    ArrayNode list = node.putArray("additions");
    whole.lines().stream().filter(l -> l.entry().kind().entered()).forEach(l -> list.add(line(l)));
    return node;
  }

  /** The same with every line of the book and what was corrected. */
  static ObjectNode whole(BathBook.Whole whole, Instant now, LongFunction<String> names) {
    ObjectNode node = bath(whole, now, names);
    ArrayNode book = node.putArray("book");
    whole.lines().forEach(l -> book.add(line(l)));
    EntriesJson.history(node, whole.corrections());
    return node;
  }

  static ObjectNode contents(BathContents c, LongFunction<String> names) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    put(node, "litres", "give_or_take_l", c.litres());
    put(node, "strength", "strength_give_or_take", c.strength());
    put(node, "bromide_g_per_l", "bromide_give_or_take_g_per_l", c.bromideGPerL());
    put(node, "sulfite_g_per_l", "sulfite_give_or_take_g_per_l", c.sulfiteGPerL());
    put(
        node,
        "developer_used_g_per_l",
        "developer_used_give_or_take_g_per_l",
        c.developerUsedGPerL());
    Json.put(node, "area_m2", c.areaM2());
    Json.put(node, "area_m2_per_l", c.areaM2PerL());
    Json.put(node, "hours_hot", c.hotS() / 3600);
    ArrayNode parts = node.putArray("concentrates");
    new TreeMap<>(c.concentrates())
        .forEach(
            (name, ml) -> {
              ObjectNode one = parts.addObject().put("name", name);
              put(one, "millilitres", "give_or_take_ml", ml);
              Json.put(one, "share", c.share(name).value());
            });
    ArrayNode shares = node.putArray("shares");
    new TreeMap<>(c.shares())
        .forEach(
            (id, share) -> {
              ObjectNode one = shares.addObject().put("bath", id).put("name", names.apply(id));
              Json.put(one, "share", share);
            });
    return node;
  }

  private static void put(ObjectNode node, String field, String giveOrTake, Amount amount) {
    Json.put(node, field, amount.value());
    Json.put(node, giveOrTake, amount.expanded());
  }

  private static ObjectNode line(Balance.Line line) {
    ObjectNode node = addition(line.entry());
    ObjectNode after = node.putObject("after");
    Json.put(after, "litres", line.after().litres().value());
    Json.put(after, "strength", line.after().strength().value());
    Json.put(after, "bromide_g_per_l", line.after().bromideGPerL().value());
    Json.put(after, "sulfite_g_per_l", line.after().sulfiteGPerL().value());
    node.put("counted", line.counted());
    return node;
  }

  static ObjectNode addition(BookEntry entry) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    BookJson.entry(node, entry);
    return node;
  }
}
