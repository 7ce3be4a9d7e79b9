package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The other baths, the light, and what to change next. */
@Timeout(60)
class AfterApiTest {

  @TempDir private Path folder;
  private LocalPage page;

  @BeforeEach
  void start() throws Exception {
    page = new LocalPage(folder);
  }

  @AfterEach
  void stop() {
    page.close();
  }

  private JsonNode ok(int status, String method, String path, String body) throws Exception {
    return page.ok(status, method, path, body.replace('\'', '"'));
  }

  private void print(int number, String sized) throws Exception {
    page.mark("in", 10 * number);
    page.mark("pull", 10 * number + 5);
    ok(200, "PATCH", "/api/prints/" + number, sized);
    ok(201, "POST", "/api/prints/" + number + "/steps", "{'kind':'fix','what':'Fixer two'}");
  }

  /** 0.5 m² in a litre that is good for 0.8 m²: 62.5 %, own arithmetic. */
  @Test
  void aFixerKnowsWhatWentThroughIt() throws Exception {
    ok(
        201,
        "POST",
        "/api/shelf",
        "{'kind':'working-bath','name':'fixer two','fields':{'litres':1,'capacity_m2_per_l':0.8,"
            + "'test_every_m2':0.4,'keeps_days':30}}");
    print(1, "{'width_mm':500,'height_mm':500}");
    print(2, "{'width_mm':500,'height_mm':500}");
    print(3, "{'paper':'no size is told'}");
    JsonNode bath = ok(200, "GET", "/api/working-baths", "").path(0);
    assertEquals(3, bath.path("prints").asInt());
    assertEquals(0.5, bath.path("area_m2").asDouble(), 1e-9);
    assertEquals(0.625, bath.path("used").asDouble(), 1e-9);
    assertEquals(1, bath.path("unsized").asInt());
    assertEquals("a residual test is due", bath.path("due").path(0).asText());
    ok(200, "DELETE", "/api/prints/1/steps/1", "");
    assertEquals(
        0.25, ok(200, "GET", "/api/working-baths", "").path(0).path("area_m2").asDouble(), 1e-9);
  }

  @Test
  void aBathThatIsSpentOrOldSaysSoAndAFreshOneDoesNot() throws Exception {
    String old = LocalDate.now(ZoneId.systemDefault()).minusDays(40).toString();
    ok(
        201,
        "POST",
        "/api/shelf",
        "{'kind':'working-bath','name':'old','fields':{'made':'" + old + "','keeps_days':30}}");
    ok(
        201,
        "POST",
        "/api/shelf",
        "{'kind':'working-bath','name':'Fixer two','fields':{'litres':1,'capacity_m2_per_l':0.2}}");
    JsonNode fresh = ok(200, "GET", "/api/working-baths", "").path(1);
    assertEquals(0, fresh.path("due").size());
    print(1, "{'width_mm':500,'height_mm':500}");
    JsonNode list = ok(200, "GET", "/api/working-baths", "");
    assertTrue(list.path(1).path("due").path(0).asText().contains("used up"), list.toString());
    assertTrue(list.path(0).path("due").path(0).asText().contains("older"), list.toString());
    assertEquals(40, list.path(0).path("age_days").asInt());
    page.problem(
        400,
        "POST",
        "/api/shelf",
        "{\"kind\":\"working-bath\",\"name\":\"x\",\"fields\":{\"made\":\"last week\"}}");
  }

  /** Half the geometric mean of 16 and 8 min: 5.657 min, ANSI IT2.26-1998, 3.14. */
  @Test
  void aLightIsGoodForHalfTheGeometricMeanOfItsTest() throws Exception {
    String today = LocalDate.now(ZoneId.systemDefault()).toString();
    ok(
        201,
        "POST",
        "/api/shelf",
        "{'kind':'light','name':'over the sink','fields':{'clean_min':8,'fogged_min':16,"
            + "'tested':'"
            + today
            + "'}}");
    ok(201, "POST", "/api/shelf", "{'kind':'light','name':'phone','fields':{}}");
    JsonNode lights = ok(200, "GET", "/api/lights", "");
    assertEquals(5.657, lights.path(0).path("longest_min").asDouble(), 0.001);
    assertFalse(lights.path(0).path("due").asBoolean());
    assertTrue(lights.path(1).path("due").asBoolean());
    assertTrue(lights.path(1).path("words").asText().contains("not tested"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"too-hard", "too-flat", "no-colour", "blacks-weak", "gritty"})
  void eachVerdictHasThingsToChangeWithTheirSideEffects(String verdict) throws Exception {
    JsonNode advice = ok(200, "GET", "/api/advice?verdict=" + verdict, "");
    assertTrue(advice.path("basis").asText().contains("common practice"));
    assertTrue(advice.path("options").size() >= 3, advice.toString());
    advice
        .path("options")
        .forEach(o -> assertFalse(o.path("side_effect").asText().isEmpty(), o.toString()));
    assertEquals(
        "verdict",
        page.problem(400, "GET", "/api/advice?verdict=lovely", "").path("field").asText());
  }
}
