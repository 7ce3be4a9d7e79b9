package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.session.PrintSummary;
import trayward.host.session.Session;

/** Prints and sessions as JSON. Stateless. */
final class PrintJson {

  private PrintJson() {}

  static ObjectNode print(Print print, PrintSummary summary) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("id", print.number());
    node.put("session", print.sessionId());
    node.put("started", print.startedWall().toString());
    node.put("title", print.title());
    node.put("notes", print.notes());
    node.put("in_progress", print.inProgress());
    node.put("pulled", print.pullAt().isPresent());
    double inS = print.inAt().map(Mark::sessionS).orElse(Double.NaN);
    ArrayNode marks = node.putArray("marks");
    for (Mark mark : print.marks()) {
      ObjectNode one = marks.addObject();
      one.put("kind", mark.kind().word());
      Json.put(one, "elapsed_s", mark.sessionS() - inS);
      one.put("at", mark.wall().toString());
      one.put("by", mark.by());
      Json.put(one, "bath_c", mark.bathC());
    }
    ObjectNode sum = node.putObject("summary");
    Json.put(sum, "in_c", summary.atInC());
    Json.put(sum, "emergence_c", summary.atEmergenceC());
    Json.put(sum, "pull_c", summary.atPullC());
    Json.put(sum, "mean_c", summary.meanC());
    Json.put(sum, "min_c", summary.minC());
    Json.put(sum, "max_c", summary.maxC());
    Json.put(sum, "deviation_k", summary.deviationK());
    sum.put("samples", summary.samples());
    Json.put(sum, "emergence_s", summary.emergenceS());
    Json.put(sum, "pull_s", summary.pullS());
    return node;
  }

  static ObjectNode session(Session session) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("id", session.id());
    node.put("started", session.startedWall().toString());
    node.put("ended", session.endedWall().map(Object::toString).orElse(null));
    node.put("ending", session.ending());
    node.put("simulated", session.simulated());
    return node;
  }
}
