package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.host.link.AlarmHistory;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;
import trayward.host.web.guard.Door;

/** The alarm record over HTTP on loopback, from a fake controller. */
@Timeout(60)
class AlarmApiTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  private static final AlarmHistory.Step STEP =
      new AlarmHistory.Step(
          "RELAY_STUCK",
          "UNACKNOWLEDGED",
          "2026-11-25T10:00:00Z",
          61.25,
          "the heater relay",
          "CRITICAL",
          "act now",
          "SR-11",
          "Heat arrives.",
          "One contact is left.",
          "Unplug the heater now.");

  @TempDir private Path folder;
  private final FakeTray tray = new FakeTray();
  private final HttpClient http = HttpClient.newHttpClient();
  private TrayLog log;
  private PageServer server;

  @BeforeEach
  void start() throws Exception {
    log = LogFile.open(folder);
    server = PageServer.start(Door.local(), tray, log, new FakeLogbook(log));
  }

  @AfterEach
  void stop() {
    server.close();
    log.close();
  }

  private JsonNode get(int status, String path) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + server.port() + path);
    HttpResponse<String> response =
        http.send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofString());
    assertEquals(status, response.statusCode(), response.body());
    return JSON.readTree(response.body());
  }

  @Test
  void theRecordIsListedAsTheControllerHasItWithEveryText() throws Exception {
    tray.history = Optional.of(new AlarmHistory(false, 2, 3, List.of(STEP, STEP)));
    JsonNode record = get(200, "/api/alarms");
    assertEquals(100, tray.historyAsked);
    assertEquals(
        JSON
            .readTree(
                """
            {"alarm_record_ok": false, "skipped_lines": 2, "lost_steps": 3, "steps": null}
            """)
            .properties()
            .stream()
            .map(java.util.Map.Entry::getKey)
            .toList(),
        record.properties().stream().map(java.util.Map.Entry::getKey).toList());
    assertEquals(2, record.path("skipped_lines").asInt());
    assertEquals(3, record.path("lost_steps").asInt());
    assertEquals(2, record.path("steps").size());
    assertEquals(
        JSON.readTree(
            """
            {"name": "RELAY_STUCK", "state": "UNACKNOWLEDGED", "at": "2026-11-25T10:00:00Z",
             "uptime_s": 61.25, "detail": "the heater relay", "priority": "CRITICAL",
             "priority_words": "act now", "requirement": "SR-11", "what": "Heat arrives.",
             "why": "One contact is left.", "action": "Unplug the heater now."}
            """),
        record.path("steps").path(0));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2000})
  void asManyAreAskedForAsWanted(int most) throws Exception {
    get(200, "/api/alarms?most=" + most);
    assertEquals(most, tray.historyAsked);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "2001", "-1", "x", "", "99999999999"})
  void aNumberOutOfRangeIsRefusedAndNamesWhatIsAccepted(String most) throws Exception {
    JsonNode problem = get(400, "/api/alarms?most=" + most);
    assertEquals("most", problem.path("field").asText());
    assertEquals("a whole number from 1 to 2000", problem.path("accepted").asText());
  }

  @Test
  void theStatusSaysWhetherTheRecordCanBeWritten() throws Exception {
    assertTrue(get(200, "/api/status").path("alarm_record_ok").asBoolean());
    tray.history = Optional.of(new AlarmHistory(false, 0, 0, List.of()));
    JsonNode bad = get(200, "/api/status").path("alarm_record_ok");
    assertTrue(bad.isBoolean() && !bad.asBoolean());
    tray.history = Optional.empty();
    assertTrue(get(200, "/api/status").path("alarm_record_ok").isNull());
    get(503, "/api/alarms");
  }
}
