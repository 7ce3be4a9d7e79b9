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
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.host.bath.Checked;
import trayward.host.report.plan.PlanAnswer;
import trayward.host.report.plan.PlanJson;
import trayward.host.report.plan.Planners;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;
import trayward.host.web.guard.Door;

/** The planners on loopback. */
@Timeout(60)
class PlanApiTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;
  private final HttpClient http = HttpClient.newHttpClient();
  private TrayLog log;
  private PageServer server;

  @BeforeEach
  void start() throws Exception {
    log = LogFile.open(folder);
    server = PageServer.start(Door.local(), new FakeTray(), log, new FakeLogbook(log));
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

  /** One function makes both: the page's answer is the command line's document. */
  @Test
  void aRequestIsAnsweredAsTheCommandLineIs() throws Exception {
    var checked = Planners.of("air").orElseThrow().answer(Map.of("volume", "15", "flow", "150"));
    assertTrue(checked instanceof Checked.Good<PlanAnswer>, checked.toString());
    JsonNode command = PlanJson.node(((Checked.Good<PlanAnswer>) checked).value());
    assertEquals(command.toString(), get(200, "/api/plan/air?volume=15&flow=150").toString());
  }

  @Test
  void aDilutionMayBeWrittenWithItsPlus() throws Exception {
    for (String written : new String[] {"1+7", "1%2B7"}) {
      JsonNode bath = get(200, "/api/plan/bath?litres=1&dilution=" + written);
      assertEquals("1+7", bath.path("dilution").asText());
      assertEquals(875, bath.path("water_ml").asDouble(), 1e-3);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "/api/plan/air?flow=150, volume, nothing",
    "/api/plan/air?flow=150&volume=0, volume, 0",
    "/api/plan/heat?humidity=120, humidity, 120",
    "/api/plan/exposure?time=8&from_f=0&to_f=8, from_f, 0",
    "/api/plan/heat?colour=red, colour, an unknown option",
    "/api/plan/heat?litres=1&litres=2, litres, more than one"
  })
  void whatIsWrongIsAProblemWithItsField(String path, String field, String found) throws Exception {
    JsonNode problem = get(400, path);
    assertEquals(field, problem.path("field").asText());
    assertEquals(found, problem.path("found").asText());
    assertTrue(problem.path("detail").asText().contains(field + ": found " + found));
  }

  /** A form made from it asks for whatever a planner insists on. */
  @Test
  void theListSaysWhatEachPlannerMayBeTold() throws Exception {
    JsonNode all = get(200, "/api/plan");
    assertEquals(Planners.all().size(), all.size());
    JsonNode volume = all.path(0).path("options").path(0);
    assertEquals("air", all.path(0).path("name").asText());
    assertEquals("volume", volume.path("name").asText());
    assertEquals("number", volume.path("kind").asText());
    assertEquals("0.05 to 10000 m³", volume.path("accepted").asText());
    assertTrue(volume.path("required").asBoolean());
  }

  @Test
  void aPlannerThatIsNoneIsNotFound() throws Exception {
    assertEquals("no planner weather", get(404, "/api/plan/weather").path("detail").asText());
  }
}
