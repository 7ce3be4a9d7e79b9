package trayward.host.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import trayward.host.link.AlarmHistory;
import trayward.host.link.LevelView;
import trayward.host.link.TrayKnownView;
import trayward.host.link.TrayLink;
import trayward.host.link.TrayStatus;
import trayward.host.link.UncertaintyView;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.store.LogFailed;
import trayward.host.store.TrayLog;

/** The status document of {@code /api/status} and the stream. Safe on any thread. */
final class StatusJson {

  private final TrayLink link;
  private final TrayLog log;
  private final Logbook logbook;
  private final Guide guide;
  private final boolean invented;

  StatusJson(TrayLink link, TrayLog log, Logbook logbook, Guide guide) {
    this.guide = guide;
    this.link = link;
    this.log = log;
    this.logbook = logbook;
    this.invented = log.invented();
  }

  /** The document now; empty where the controller does not answer. */
  Optional<ObjectNode> now() {
    return link.latest().map(this::document);
  }

  /** What changes where a person should see it at once; empty where the controller is silent. */
  Optional<List<Object>> sign() {
    return link.latest()
        .map(
            s ->
                List.of(
                    s.state(),
                    s.setC(),
                    s.firstOut(),
                    s.alarms(),
                    s.withheld(),
                    s.fanProven(),
                    s.fanCommanded(),
                    s.level().level()));
  }

  private ObjectNode document(TrayStatus s) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("state", s.state());
    node.put("state_words", words(s.state()));
    Json.put(node, "state_s", s.stateS());
    Json.put(node, "remaining_s", s.remainingS() < 0 ? Double.NaN : s.remainingS());
    Json.put(node, "bath_c", s.bathC());
    node.put("bath_class", s.bathClass());
    Json.put(node, "second_bath_c", s.secondBathC());
    Json.put(node, "plate_c", s.plateC());
    Json.put(node, "set_c", s.setC());
    Json.put(node, "duty", s.duty());
    node.put("heater_on", s.heaterOn());
    node.put("safety_relay", s.safetyRelay());
    node.put("fan_commanded", s.fanCommanded());
    node.put("fan_proven", s.fanProven());
    Json.put(node, "fan_rpm", s.fanRpm());
    node.put("airflow", s.airflow());
    if (s.firstOut().isEmpty()) {
      node.putNull("first_out");
    } else {
      node.put("first_out", s.firstOut());
    }
    ArrayNode withheld = node.putArray("withheld");
    s.withheld().forEach(withheld::add);
    ArrayNode reasons = node.putArray("withheld_words");
    s.withheldWords().forEach(reasons::add);
    ArrayNode alarms = node.putArray("alarms");
    s.alarms().forEach(a -> alarms.add(AlarmApi.alarm(a)));
    prints(node);
    node.set("forecast", logbook.outlook().map(ForecastApi::brief).orElse(null));
    guide.print().ifPresent(number -> node.putObject("guide").put("print", number));
    node.put("simulated", link.simulated());
    node.put("demo", invented);
    Json.put(node, "uptime_s", s.uptimeS());
    node.put("scan", s.scan());
    Json.put(node, "presence_due_s", s.presenceDueS());
    node.put("store_writable", s.storeWritable());
    node.put("alarm_record_ok", link.alarmHistory(0).map(AlarmHistory::ok).orElse(null));
    ObjectNode wear = node.putObject("relay_closings");
    wear.put("heater", s.heaterClosings());
    wear.put("safety", s.safetyClosings());
    level(node, s.level());
    uncertainty(node, s.uncertainty());
    tray(node, s.tray());
    ArrayNode overdue = node.putArray("upkeep_overdue");
    link.upkeep().overdueWords().forEach(overdue::add);
    return node;
  }

  private static void uncertainty(ObjectNode node, UncertaintyView uncertainty) {
    Json.put(node, "bath_uncertainty_k", uncertainty.bathK());
    Json.put(node, "second_bath_uncertainty_k", uncertainty.secondBathK());
    Json.put(node, "plate_uncertainty_k", uncertainty.plateK());
    node.put("calibration_record_ok", uncertainty.recordReadable());
  }

  private static void tray(ObjectNode node, TrayKnownView tray) {
    node.put("tray_seen", tray.words().isEmpty() ? null : tray.words());
    Json.put(node, "litres_seen", tray.litres());
    Json.put(node, "litres_seen_uncertainty", tray.uncertaintyL());
    TrayKnownView.Learned learned = tray.learned();
    if (learned == null) {
      node.putNull("tray_learned");
    } else {
      ObjectNode known = node.putObject("tray_learned");
      known.put("name", learned.name());
      known.put("date", learned.date());
      known.put("litre_measured", learned.litreMeasured());
    }
    Json.put(node, "highest_hold_c", tray.highestHoldC());
    node.put("out_of_reach", tray.outOfReach().isEmpty() ? null : tray.outOfReach());
  }

  private static void level(ObjectNode node, LevelView level) {
    node.put("level", level.level());
    Json.put(node, "liquid_l", level.litres());
    Json.put(node, "liquid_low_l", level.lowL());
    Json.put(node, "liquid_high_l", level.highL());
    Json.put(node, "add_l", level.addL());
  }

  private void prints(ObjectNode node) {
    boolean ok = logbook.healthy();
    try {
      OptionalDouble nowS = logbook.sessionS();
      Optional<Print> current = log.currentPrint();
      node.set("current_print", current.map(p -> print(p, nowS)).orElse(null));
      Optional<Print> last = log.prints(1, 0).stream().filter(p -> !p.inProgress()).findFirst();
      node.set("last_print", last.map(p -> print(p, p.endS())).orElse(null));
    } catch (LogFailed e) {
      ok = false;
      node.putNull("current_print");
      node.putNull("last_print");
    }
    node.put("log_ok", ok);
  }

  private static ObjectNode print(Print print, OptionalDouble nowS) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("id", print.number());
    double inS = print.inAt().map(Mark::sessionS).orElse(Double.NaN);
    Json.put(node, "elapsed_s", Math.max(0, nowS.orElse(Double.NaN) - inS));
    ArrayNode marks = node.putArray("marks");
    for (Mark mark : print.marks()) {
      ObjectNode one = marks.addObject();
      one.put("kind", mark.kind().word());
      Json.put(one, "elapsed_s", mark.sessionS() - inS);
      Json.put(one, "bath_c", mark.bathC());
    }
    return node;
  }

  /** The state in the words of the trade. */
  static String words(String state) {
    return state.toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
