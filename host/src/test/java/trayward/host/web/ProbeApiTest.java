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
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.host.link.LinkAnswer;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;
import trayward.host.web.guard.Door;

/** Probes and their calibration on loopback, over a fake controller. */
@Timeout(60)
class ProbeApiTest {

  private static final ObjectMapper JSON = new ObjectMapper();

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

  private JsonNode answer(int status, String method, String path, String body) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + server.port() + path);
    HttpResponse<String> response =
        http.send(
            HttpRequest.newBuilder(uri)
                .method(method, HttpRequest.BodyPublishers.ofString(body))
                .build(),
            HttpResponse.BodyHandlers.ofString());
    assertEquals(status, response.statusCode(), response.body());
    return JSON.readTree(response.body());
  }

  @Test
  void aCalibratedProbeIsShownBeforeAndAfterItsCorrection() throws Exception {
    JsonNode bath = answer(200, "GET", "/api/probes", "").path("probes").path(0);
    assertEquals("bath", bath.path("role").asText());
    assertEquals("28-0000000000ab", bath.path("probe").asText());
    assertEquals(39.8125, bath.path("raw_c").asDouble());
    assertEquals(39.5, bath.path("corrected_c").asDouble());
    assertTrue(bath.path("calibrated").asBoolean());
    assertEquals(-0.3125, bath.path("offset_k").asDouble());
    assertEquals(1, bath.path("slope").asDouble());
    assertEquals("2026-11-20", bath.path("date").asText());
    assertEquals(0.13, bath.path("uncertainty_k").asDouble());
    assertEquals(2, bath.path("coverage_factor").asDouble());
    assertTrue(bath.path("not_still").isNull());
    JsonNode point = bath.path("points").path(0);
    assertEquals("reference", point.path("point").asText());
    assertEquals(0.1, point.path("uncertainty_k").asDouble());
  }

  @Test
  void aProbeAsBoughtHasTheDataSheetsUncertaintyAndNoFactor() throws Exception {
    JsonNode plate = answer(200, "GET", "/api/probes", "").path("probes").path(1);
    assertFalse(plate.path("calibrated").asBoolean());
    assertEquals(0.5, plate.path("uncertainty_k").asDouble());
    assertTrue(plate.path("coverage_factor").isNull());
    assertTrue(plate.path("date").isNull());
    assertTrue(plate.path("corrected_c").isNull(), "not valid is null, never a number");
    assertTrue(plate.path("record_of_another_probe").asBoolean());
    assertTrue(plate.path("uncertainty_words").asText().contains("data sheet"));
  }

  @Test
  void theStatusTellsTheUncertaintyOfEachReadingAndAnUnreadableRecord() throws Exception {
    JsonNode status = answer(200, "GET", "/api/status", "");
    assertEquals(0.13, status.path("bath_uncertainty_k").asDouble());
    assertTrue(status.path("second_bath_uncertainty_k").isNull());
    assertEquals(0.5, status.path("plate_uncertainty_k").asDouble());
    assertTrue(status.path("calibration_record_ok").asBoolean());
    tray.recordReadable = false;
    assertFalse(
        answer(200, "GET", "/api/status", "").path("calibration_record_ok").asBoolean(true));
    assertFalse(
        answer(200, "GET", "/api/probes", "").path("calibration_record_ok").asBoolean(true));
  }

  @Test
  void pointsAreTakenAndForgotten() throws Exception {
    String bath = "/api/probes/bath/calibration";
    answer(200, "POST", bath, "{\"point\":\"ice\"}");
    answer(200, "POST", bath, "{\"point\":\"reference\",\"celsius\":40.0,\"uncertainty_k\":0.1}");
    JsonNode after = answer(200, "DELETE", bath, "");
    assertEquals(List.of("bath ice", "bath 40.0 0.1", "bath forgotten"), tray.calibrated);
    assertTrue(after.has("probes"), "each answers with the probes as they are then");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | point",
        "{\"point\":\"steam\"} | point",
        "{\"point\":\"ice\",\"celsius\":0} | celsius",
        "{\"point\":\"reference\"} | celsius",
        "{\"point\":\"reference\",\"celsius\":40} | uncertainty_k",
        "{\"point\":\"reference\",\"celsius\":14.9,\"uncertainty_k\":0.1} | celsius",
        "{\"point\":\"reference\",\"celsius\":70.1,\"uncertainty_k\":0.1} | celsius",
        "{\"point\":\"reference\",\"celsius\":40,\"uncertainty_k\":0} | uncertainty_k",
        "{\"point\":\"reference\",\"celsius\":40,\"uncertainty_k\":0.51} | uncertainty_k",
        "{\"point\":\"reference\",\"celsius\":\"warm\",\"uncertainty_k\":0.1} | celsius",
        "{\"point\":\"ice\",\"by\":\"me\"} | by",
        "[] | body",
      })
  void aWrongPointNamesItsFieldAndReachesNobody(String body, String field) throws Exception {
    JsonNode problem = answer(400, "POST", "/api/probes/bath/calibration", body);
    assertEquals(field, problem.path("field").asText());
    assertEquals(List.of(), tray.calibrated);
  }

  @Test
  void aProbeThatIsNotFittedIs404AndARefusalIs409() throws Exception {
    answer(404, "POST", "/api/probes/second_bath/calibration", "{\"point\":\"ice\"}");
    answer(404, "DELETE", "/api/probes/sink/calibration", "");
    tray.answer = new LinkAnswer.Refused("the reading did not stand still");
    JsonNode refused = answer(409, "POST", "/api/probes/bath/calibration", "{\"point\":\"ice\"}");
    assertEquals("the reading did not stand still", refused.path("detail").asText());
    answer(409, "DELETE", "/api/probes/bath/calibration", "");
  }
}
