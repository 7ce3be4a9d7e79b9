package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.link.LinkAnswer;
import trayward.host.session.TraceSample;

/** A print made again. */
@Timeout(60)
class RepeatApiTest {

  @TempDir private Path folder;
  private LocalPage page;

  @BeforeEach
  void aPrintThatWasMade() throws Exception {
    page = new LocalPage(folder);
    ok(
        201,
        "POST",
        "/api/baths",
        "{'name':'then','parts':[{'what':'water','millilitres':1000},"
            + "{'what':'bromide 10 %','millilitres':20},{'what':'sulfite 10 %','millilitres':80}]}");
    ok(201, "POST", "/api/marks", "{'kind':'in'}");
    long session = page.log.openSession().orElseThrow().id();
    List<TraceSample> trace = new ArrayList<>();
    for (int s = 0; s <= 240; s++) {
      trace.add(new TraceSample(s, 41.02, 46, 41, 0.4, "HOLDING", true));
    }
    page.log.addTrace(session, trace);
    page.logbook.nowS = 180;
    ok(201, "POST", "/api/marks", "{'kind':'emergence'}");
    page.logbook.nowS = 225;
    ok(201, "POST", "/api/marks", "{'kind':'pull'}");
    page.logbook.nowS = 300;
    ok(
        200,
        "PATCH",
        "/api/prints/1",
        "{'paper':'Bark','width_mm':200,'height_mm':250,'magnification':5,'aperture':8,"
            + "'base_exposure_s':20,'stops_over':2}");
  }

  /** Bodies are written with ' for ". */
  private JsonNode ok(int status, String method, String path, String body) throws Exception {
    return page.ok(status, method, path, body.replace('\'', '"'));
  }

  private JsonNode problem(int status, String method, String path, String body) throws Exception {
    return page.problem(status, method, path, body.replace('\'', '"'));
  }

  @AfterEach
  void stop() {
    page.close();
  }

  private JsonNode plan(String query) throws Exception {
    return ok(200, "GET", "/api/prints/1/repeat" + query, "");
  }

  @Test
  void theSetTemperatureIsThatOfThePrintAndItsTimesAreTold() throws Exception {
    JsonNode plan = plan("");
    assertEquals(41, plan.path("set_c").asDouble());
    assertEquals(180, plan.path("emergence_s").asDouble());
    assertEquals(225, plan.path("pull_s").asDouble());
    assertEquals(80, plan.path("exposure").path("seconds").asDouble(), 1e-9);
  }

  @Test
  void aPrintMadeFarFromWhatWasSetIsRepeatedAtTheBathItWasIn() throws Exception {
    page.ok(201, "POST", "/api/marks", "{\"kind\":\"in\"}");
    long session = page.log.openSession().orElseThrow().id();
    for (int s = 300; s <= 320; s++) {
      page.log.addTrace(session, new TraceSample(s, 24.1, 24, 40, 0, "OFF", false));
    }
    page.logbook.nowS = 320;
    page.ok(201, "POST", "/api/marks", "{\"kind\":\"pull\"}");
    assertEquals(24, ok(200, "GET", "/api/prints/2/repeat", "").path("set_c").asDouble());
  }

  /** (m + 1)²: from 5 to 7 times it is (8/6)² = 1.7778; with p = 0.8 of the time it is more. */
  @Test
  void theExposureIsRescaledToAnotherSize() throws Exception {
    assertEquals(
        20 * 64.0 / 36, plan("?magnification=7").path("exposure").path("base_s").asDouble(), 1e-3);
    // 280 mm in place of 200: 7 times.
    assertEquals(7, plan("?width_mm=280").path("exposure").path("magnification").asDouble(), 1e-9);
    ok(
        201,
        "POST",
        "/api/shelf",
        "{'kind':'paper','name':'bark','fields':{'reciprocity_p':0.8,'pull_early_s':5}}");
    JsonNode slow = plan("?magnification=7");
    assertEquals(
        20 * Math.pow(64.0 / 36, 1 / 0.8), slow.path("exposure").path("base_s").asDouble(), 1e-3);
    assertEquals(5, slow.path("pull_early_s").asDouble());
    problem(400, "GET", "/api/prints/1/repeat?magnification=0", "");
    problem(404, "GET", "/api/prints/9/repeat", "");
  }

  @Test
  void theBathIsComparedAndWhatWouldBringItBackIsPoured() throws Exception {
    ok(
        201,
        "POST",
        "/api/baths",
        "{'name':'now','parts':[{'what':'water','millilitres':900},"
            + "{'what':'bromide 10 %','millilitres':5}]}");
    JsonNode bath = plan("").path("bath");
    assertEquals("bromide", bath.path("differences").path(2).path("what").asText());
    double then = bath.path("differences").path(2).path("then").asDouble();
    for (JsonNode one : bath.path("additions")) {
      ok(
          201,
          "POST",
          "/api/baths/2/additions",
          "{'what':'"
              + one.path("what").asText()
              + "','millilitres':"
              + one.path("millilitres")
              + "}");
    }
    JsonNode after = ok(200, "GET", "/api/baths/2", "").path("contents");
    assertEquals(2, bath.path("additions").size());
    assertEquals(then, after.path("bromide_g_per_l").asDouble(), 0.01);
    assertEquals(8.0 / 1.1, after.path("sulfite_g_per_l").asDouble(), 0.01);
    assertEquals(0, plan("").path("bath").path("additions").size(), "within a syringe");
  }

  @Test
  void repeatingSetsTheTemperatureAndTheOldPrintBecomesTheGuide() throws Exception {
    JsonNode done = ok(200, "POST", "/api/prints/1/repeat", "");
    assertEquals("set", done.path("set_temperature").asText());
    assertEquals(1, ok(200, "GET", "/api/status", "").path("guide").path("print").asInt());
    page.tray.answer = new LinkAnswer.Refused("the set range is 15 to 40 °C");
    assertEquals(
        "refused: the set range is 15 to 40 °C",
        ok(200, "POST", "/api/prints/1/repeat", "{'magnification':7}")
            .path("set_temperature")
            .asText());
    problem(400, "POST", "/api/prints/1/repeat", "{'magnification':-7}");
  }
}
