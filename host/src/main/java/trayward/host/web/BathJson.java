package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import trayward.host.bath.Addition;
import trayward.host.bath.Bath;

/** Baths and additions as JSON. Stateless. */
final class BathJson {

  private BathJson() {}

  static ObjectNode bath(Bath bath, List<Addition> additions) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("id", bath.id());
    node.put("made", bath.madeWall().toString());
    node.put("name", bath.name());
    Json.put(node, "litres", bath.litres());
    Json.put(node, "litres_now", bath.litresWith(additions));
    node.put("note", bath.note());
    ArrayNode list = node.putArray("additions");
    additions.forEach(a -> list.add(addition(a)));
    return node;
  }

  static ObjectNode addition(Addition addition) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("id", addition.id());
    node.put("bath", addition.bathId());
    node.put("at", addition.wall().toString());
    Json.put(node, "session_s", addition.sessionS());
    node.put("what", addition.what());
    Json.put(node, "millilitres", addition.millilitres());
    return node;
  }
}
