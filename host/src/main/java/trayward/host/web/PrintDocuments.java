package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import trayward.host.report.EntriesJson;
import trayward.host.session.Print;
import trayward.host.session.PrintEntries;
import trayward.host.session.PrintField;
import trayward.host.session.PrintSummary;
import trayward.host.session.Session;
import trayward.host.store.PrintArchive;
import trayward.host.store.TrayLog;

/** Prints and sessions with what is said of them, as JSON. Safe on any thread. */
final class PrintDocuments {

  private final PrintArchive archive;

  PrintDocuments(TrayLog log) {
    this.archive = log.archive();
  }

  /** A print with everything. */
  ObjectNode whole(Print print) {
    PrintEntries entries = archive.entries(print.number());
    ObjectNode node = PrintJson.print(print, archive.summaries(List.of(print)).get(0));
    EntriesJson.put(node, entries);
    node.put("ask_again", PrintEntries.askAgain(print, entries.fields(), Instant.now()));
    return node;
  }

  /** Prints with what their fields say. */
  ArrayNode list(List<Print> prints) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    List<PrintSummary> summaries = archive.summaries(prints);
    Map<Long, Map<PrintField, String>> fields = archive.fields(prints);
    Instant now = Instant.now();
    for (int i = 0; i < prints.size(); i++) {
      Print print = prints.get(i);
      Map<PrintField, String> said = fields.getOrDefault(print.number(), Map.of());
      ObjectNode node = PrintJson.print(print, summaries.get(i));
      EntriesJson.record(node, said);
      node.put("ask_again", PrintEntries.askAgain(print, said, now));
      list.add(node);
    }
    return list;
  }

  /** A session with what was felt in it. */
  ObjectNode session(Session session) {
    return sessions(List.of(session)).get(0) instanceof ObjectNode node
        ? node
        : Json.MAPPER.createObjectNode();
  }

  /** Sessions with what was felt in them. */
  ArrayNode sessions(List<Session> sessions) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    Map<Long, String> symptoms = archive.symptoms(sessions.stream().map(Session::id).toList());
    for (Session session : sessions) {
      ObjectNode node = PrintJson.session(session);
      node.put("symptoms", symptoms.getOrDefault(session.id(), ""));
      EntriesJson.history(node, archive.sessionHistory(session.id()));
      list.add(node);
    }
    return list;
  }
}
