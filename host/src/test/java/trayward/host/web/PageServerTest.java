package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;
import trayward.host.link.AlarmView;
import trayward.host.link.Command;
import trayward.host.link.LevelView;
import trayward.host.link.LinkAnswer;
import trayward.host.link.TrayKnownView;
import trayward.host.link.TrayLink;
import trayward.host.session.TraceSample;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;
import trayward.host.web.guard.Door;

/** The JSON interface on loopback, over a fake controller and a real log. */
@Timeout(60)
class PageServerTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;
  private final FakeTray tray = new FakeTray();
  private final HttpClient http = HttpClient.newHttpClient();
  private TrayLog log;
  private FakeLogbook logbook;
  private PageServer server;

  @BeforeEach
  void start() throws Exception {
    log = LogFile.open(folder);
    logbook = new FakeLogbook(log);
    server = PageServer.start(Door.local(), tray, log, logbook);
  }

  @AfterEach
  void stop() {
    server.close();
    log.close();
  }

  private HttpResponse<String> send(String method, String path, String body) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + server.port() + path);
    return http.send(
        HttpRequest.newBuilder(uri)
            .method(method, HttpRequest.BodyPublishers.ofString(body))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private JsonNode ok(int status, String method, String path, String body) throws Exception {
    HttpResponse<String> response = send(method, path, body);
    assertEquals(status, response.statusCode(), response.body());
    return JSON.readTree(response.body());
  }

  private JsonNode problem(int status, String method, String path, String body) throws Exception {
    HttpResponse<String> response = send(method, path, body);
    assertEquals(status, response.statusCode(), response.body());
    assertEquals(
        "application/problem+json",
        response.headers().firstValue("Content-Type").orElse("").split(";", -1)[0]);
    JsonNode node = JSON.readTree(response.body());
    // RFC 9457: these members, and the status again.
    assertEquals(status, node.path("status").asInt());
    assertTrue(node.hasNonNull("title") && node.hasNonNull("detail"), response.body());
    return node;
  }

  @Test
  void theStatusHasEveryFieldOfTheContract() throws Exception {
    tray.alarms =
        List.of(
            new AlarmView(
                "AIR_LOST",
                "UNACKNOWLEDGED",
                true,
                "CRITICAL",
                "act now",
                "SR-05",
                "lost",
                "vapour",
                "leave"));
    JsonNode status = ok(200, "GET", "/api/status", "");
    for (String field :
        List.of(
            "state",
            "bath_c",
            "plate_c",
            "set_c",
            "duty",
            "heater_on",
            "fan_commanded",
            "fan_proven",
            "fan_rpm",
            "first_out",
            "withheld",
            "alarms",
            "current_print",
            "simulated",
            "uptime_s")) {
      assertTrue(status.has(field), field);
    }
    assertEquals("HOLDING", status.path("state").asText());
    assertEquals(39.5, status.path("bath_c").asDouble());
    assertTrue(status.path("second_bath_c").isNull(), "not valid is null, never a number");
    assertEquals("AIR_LOST", status.path("first_out").asText());
    assertEquals("leave", status.path("alarms").path(0).path("action").asText());
    assertEquals("act now", status.path("alarms").path(0).path("priority_words").asText());
  }

  @Test
  void withoutAControllerTheStatusIsAProblemAndHealthIsBad() throws Exception {
    tray.silent = true;
    problem(503, "GET", "/api/status", "");
    assertEquals(503, send("GET", "/healthz", "").statusCode());
    tray.silent = false;
    assertEquals(200, send("GET", "/healthz", "").statusCode());
  }

  @ParameterizedTest
  @ValueSource(strings = {"start", "stop", "acknowledge", "reset", "presence"})
  void everyCommandReachesTheController(String word) throws Exception {
    assertTrue(ok(200, "POST", "/api/commands/" + word, "").path("accepted").asBoolean());
    assertEquals(List.of(Command.of(word).orElseThrow()), tray.asked);
  }

  @Test
  void aRefusedCommandIs409WithTheReason() throws Exception {
    tray.answer = new LinkAnswer.Refused("acknowledge the alarm first");
    JsonNode problem = problem(409, "POST", "/api/commands/reset", "");
    assertEquals("acknowledge the alarm first", problem.path("detail").asText());
  }

  @Test
  void aCommandNobodyAnsweredIs503() throws Exception {
    tray.answer = new LinkAnswer.NotDelivered("the controller did not answer");
    problem(503, "POST", "/api/commands/stop", "");
  }

  @Test
  void unknownAddressesAndMethodsAreProblemsToo() throws Exception {
    problem(404, "POST", "/api/commands/boil", "");
    problem(404, "GET", "/api/nothing", "");
    problem(405, "DELETE", "/api/status", "");
    problem(503, "GET", "/api/forecast", "");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "PUT|/api/set-temperature|{\"celsius\":77}|celsius",
        "PUT|/api/set-temperature|{\"celsius\":\"40\"}|celsius",
        "PUT|/api/set-temperature|{}|celsius",
        "PUT|/api/set-temperature|{\"celsius\":40,\"kelvin\":1}|kelvin",
        "PUT|/api/set-temperature|40|body",
        "PUT|/api/set-temperature|{\"celsius\":40|body",
        "PUT|/api/set-temperature|{\"celsius\":1e999}|celsius",
        "POST|/api/marks|{\"kind\":\"out\"}|kind",
        "POST|/api/marks|{\"kind\":3}|kind",
        "POST|/api/baths|{\"name\":\"a\",\"litres\":-1}|litres",
        "POST|/api/baths|{\"name\":\"\",\"litres\":1}|name",
        "GET|/api/prints?limit=x||limit",
        "GET|/api/prints/one||id",
      })
  void aBadRequestNamesItsField(String method, String path, String body, String field)
      throws Exception {
    JsonNode problem = problem(400, method, path, body == null ? "" : body);
    assertEquals(field, problem.path("field").asText());
    assertFalse(problem.path("accepted").asText().isEmpty());
  }

  @Test
  @Verifies(value = "SR-15", side = Side.ALLOWS)
  void aPrintIsMarkedListedChangedAndHasItsTrace() throws Exception {
    logbook.nowS = 10;
    assertEquals(1, ok(201, "POST", "/api/marks", "{\"kind\":\"in\"}").path("id").asInt());
    for (int i = 0; i <= 40; i++) {
      log.addTrace(1, new TraceSample(10 + i, 39 + 0.05 * i, 45, 40, 0.4, "HOLDING", true));
    }
    logbook.nowS = 30;
    JsonNode running = ok(200, "GET", "/api/status", "").path("current_print");
    assertEquals(20, running.path("elapsed_s").asDouble());
    ok(201, "POST", "/api/prints/1/marks", "{\"kind\":\"emergence\"}");
    logbook.nowS = 50;
    JsonNode print = ok(201, "POST", "/api/marks", "{\"kind\":\"pull\"}");
    // By hand: 41 samples from 39.00 to 41.00 °C in even steps: mean 40, emergence half way.
    JsonNode summary = print.path("summary");
    assertEquals(40.0, summary.path("mean_c").asDouble(), 1e-9);
    assertEquals(40.0, summary.path("emergence_c").asDouble(), 1e-9);
    assertEquals(39.0, summary.path("in_c").asDouble(), 1e-9);
    assertEquals(41.0, summary.path("pull_c").asDouble(), 1e-9);
    assertEquals(20, summary.path("emergence_s").asDouble());
    assertEquals(40, summary.path("pull_s").asDouble());
    ok(200, "PATCH", "/api/prints/1", "{\"title\":\"ferry, morning\",\"notes\":\"a; \\\"b\\\"\"}");
    assertEquals(
        "ferry, morning", ok(200, "GET", "/api/prints", "").path(0).path("title").asText());
    List<String> trace = send("GET", "/api/prints/1/trace.csv", "").body().lines().toList();
    assertEquals(42, trace.size());
    assertEquals("t_s,bath_c,plate_c,set_c,duty,state,fan_proven", trace.get(0));
    assertEquals("0.000,39.00,45.00,40.00,0.400,HOLDING,1", trace.get(1));
    problem(409, "POST", "/api/marks", "{\"kind\":\"emergence\"}");
    problem(404, "GET", "/api/prints/2", "");
    assertTrue(tray.asked.contains(Command.PRESENCE), "a mark is a sign of presence (SR-15)");
  }

  @Test
  void problemsAndTextsAreUtf8() throws Exception {
    JsonNode problem = problem(400, "PUT", "/api/set-temperature", "{\"celsius\":60}");
    assertEquals("15 to 50 °C", problem.path("accepted").asText());
    ok(201, "POST", "/api/prints", "{\"title\":\"Südmole 夜\"}");
    assertEquals("Südmole 夜", ok(200, "GET", "/api/prints/1", "").path("title").asText());
  }

  @Test
  void sessionsBathsAndAdditionsAreKept() throws Exception {
    assertEquals(1, ok(201, "POST", "/api/sessions", "").path("id").asInt());
    assertEquals(1, ok(200, "POST", "/api/sessions", "").path("id").asInt());
    ok(201, "POST", "/api/baths", "{\"name\":\"tray one\",\"litres\":1.0}");
    ok(201, "POST", "/api/baths/1/additions", "{\"what\":\"bromide 10 %\",\"millilitres\":5}");
    JsonNode bath = ok(200, "GET", "/api/baths", "").path(0);
    assertEquals(1.005, bath.path("litres_now").asDouble(), 1e-9);
    problem(404, "POST", "/api/baths/9/additions", "{\"what\":\"x\",\"millilitres\":5}");
    problem(400, "POST", "/api/baths/1/additions", "{\"what\":\"x\",\"millilitres\":-5}");
  }

  @Test
  void theStreamBeginsAtOnceForAnyAsker() throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + server.port() + "/api/stream");
    HttpResponse<java.util.stream.Stream<String>> response =
        http.send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofLines());
    try (var lines = response.body()) {
      List<String> two =
          lines.filter(l -> l.startsWith("data:") || l.startsWith("event:")).limit(4).toList();
      assertEquals("event: status", two.get(0));
      assertEquals("HOLDING", JSON.readTree(two.get(1).substring(5)).path("state").asText());
      assertEquals("event: status", two.get(2));
    }
  }

  @Test
  void everyAddressOfTheDescriptionIsServedAndThePageForbidsForeignScript() throws Exception {
    JsonNode described = ok(200, "GET", "/api/openapi.json", "");
    described
        .path("paths")
        .properties()
        .forEach(
            path ->
                path.getValue()
                    .fieldNames()
                    .forEachRemaining(method -> served(method, path.getKey())));
    HttpResponse<String> page = send("GET", "/", "");
    assertEquals(200, page.statusCode());
    String policy = page.headers().firstValue("Content-Security-Policy").orElse("");
    assertTrue(policy.contains("script-src 'self'"), policy);
  }

  @Test
  void theStatusTellsTheLiquidAndWhatIsOverdue() throws Exception {
    tray.level = new LevelView("LOW", 0.8, 0.6, 0.9, 0.2);
    tray.unconfirmed = "the breaker test was due";
    JsonNode status = ok(200, "GET", "/api/status", "");
    assertEquals("LOW", status.path("level").asText());
    assertEquals(0.8, status.path("liquid_l").asDouble());
    assertEquals(0.6, status.path("liquid_low_l").asDouble());
    assertEquals(0.9, status.path("liquid_high_l").asDouble());
    assertEquals(0.2, status.path("add_l").asDouble());
    assertEquals("ground-fault breaker test", status.path("upkeep_overdue").path(0).asText());
  }

  @Test
  void theStatusTellsWhatTheWarmUpSawAndWhatTheHeaterHolds() throws Exception {
    JsonNode before = ok(200, "GET", "/api/status", "");
    for (String none : List.of("tray_seen", "litres_seen", "tray_learned", "out_of_reach")) {
      assertTrue(before.has(none) && before.path(none).isNull(), none);
    }
    assertEquals(46.2, before.path("highest_hold_c").asDouble());
    tray.tray =
        new TrayKnownView(
            "about 0.9 L, as set",
            0.93,
            0.1,
            new TrayKnownView.Learned("tray", "2026-11-27", true),
            38.4,
            "the heater holds at most 38 °C");
    JsonNode status = ok(200, "GET", "/api/status", "");
    assertEquals("about 0.9 L, as set", status.path("tray_seen").asText());
    assertEquals(0.93, status.path("litres_seen").asDouble());
    assertEquals(0.1, status.path("litres_seen_uncertainty").asDouble());
    assertEquals("tray", status.path("tray_learned").path("name").asText());
    assertEquals("2026-11-27", status.path("tray_learned").path("date").asText());
    assertTrue(status.path("tray_learned").path("litre_measured").asBoolean());
    assertEquals(38.4, status.path("highest_hold_c").asDouble());
    assertEquals("the heater holds at most 38 °C", status.path("out_of_reach").asText());
  }

  @Test
  void aMeasuredLitreIsToldAndWhatItCannotBeIsRefused() throws Exception {
    JsonNode taken = ok(200, "POST", "/api/tray/calibration", "{\"litres\": 1.0}");
    assertEquals("the next warm-up counts", taken.path("words").asText());
    assertEquals(List.of(1.0), tray.measuredLitres);
    for (String wrong : List.of("{}", "{\"litres\": 0}", "{\"litres\": 21}", "{\"liters\": 1}")) {
      problem(400, "POST", "/api/tray/calibration", wrong);
    }
    tray.calibratedTray = new TrayLink.TrayCalibrated(false, "heater: found 1.9");
    JsonNode refused = problem(409, "POST", "/api/tray/calibration", "{\"litres\": 2}");
    assertEquals("heater: found 1.9", refused.path("detail").asText());
  }

  @Test
  void aLevelIsConfirmedWithOrWithoutLitresAndAPourIsTold() throws Exception {
    ok(200, "POST", "/api/commands/confirm-level", "");
    ok(200, "POST", "/api/commands/confirm-level", "{\"litres\": 1.5}");
    assertEquals(List.of(OptionalDouble.empty(), OptionalDouble.of(1.5)), tray.confirmed);
    ok(200, "POST", "/api/top-ups", "{\"litres\": 0.3}");
    assertEquals(List.of(0.3), tray.poured);
    problem(400, "POST", "/api/top-ups", "{}");
    JsonNode much = problem(400, "POST", "/api/top-ups", "{\"litres\": 21}");
    assertEquals("litres", much.path("field").asText());
    problem(400, "POST", "/api/commands/confirm-level", "{\"litres\": \"all\"}");
    tray.answer = new LinkAnswer.NotDelivered("no scan");
    problem(503, "POST", "/api/commands/confirm-level", "");
  }

  @Test
  void anOverdueStartSaysWhatIsOverdueAndHowToConfirm() throws Exception {
    tray.unconfirmed = "the breaker test was due";
    JsonNode refused = problem(409, "POST", "/api/commands/start", "");
    assertTrue(refused.path("detail").asText().contains("breaker test"));
    ok(200, "POST", "/api/commands/start", refused.path("confirm").asText());
    problem(409, "POST", "/api/commands/start", "{\"confirmed\": false}");
    problem(400, "POST", "/api/commands/start", "{\"confirmed\": 1}");
    tray.unconfirmed = "";
    ok(200, "POST", "/api/commands/start", "");
    tray.answer = new LinkAnswer.Refused("locked out");
    assertFalse(problem(409, "POST", "/api/commands/start", "").has("confirm"));
  }

  @Test
  void upkeepIsListedAndRecorded() throws Exception {
    tray.unconfirmed = "the breaker test was due";
    JsonNode before = ok(200, "GET", "/api/upkeep", "");
    assertTrue(before.path("start_needs_confirmation").asBoolean());
    assertTrue(before.path("items").path(0).path("overdue").asBoolean());
    assertEquals(-25, before.path("items").path(0).path("days_left").asInt());
    JsonNode after = ok(200, "POST", "/api/upkeep/breaker-test/done", "");
    assertFalse(after.path("start_needs_confirmation").asBoolean());
    problem(404, "POST", "/api/upkeep/kettle/done", "");
  }

  private void served(String method, String path) {
    if (path.equals("/api/stream")) {
      return; // endless; it has a test of its own
    }
    try {
      String real =
          path.replace("{id}", "7")
              .replace("{command}", "presence")
              .replace("{item}", "cartridge")
              .replace("{role}", "bath")
              .replace("{kind}", "pull")
              .replace("{cause}", "AIR_LOST")
              .replace("{n}", "1")
              .replace("{entry}", "1")
              .replace("{planner}", "heat");
      int status = send(method.toUpperCase(java.util.Locale.ROOT), real, "{}").statusCode();
      assertTrue(status != 405 && status != 500, method + " " + path + " gave " + status);
    } catch (Exception e) {
      throw new AssertionError(method + " " + path, e);
    }
  }
}
