package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.host.Verifies;

/** Bath book and shelf over HTTP. */
@Timeout(60)
class BathApiTest {

  @TempDir private Path folder;
  private LocalPage page;

  @BeforeEach
  void start() throws Exception {
    page = new LocalPage(folder);
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

  private JsonNode shelved(String kind, String name, String fields) throws Exception {
    return ok(
        201,
        "POST",
        "/api/shelf",
        "{'kind':'" + kind + "','name':'" + name + "','fields':" + fields + "}");
  }

  private JsonNode contents(long bath) throws Exception {
    return ok(200, "GET", "/api/baths/" + bath, "").path("contents");
  }

  @Test
  void aBathIsMadeUpAtADilutionOfItsConcentrates() throws Exception {
    shelved("concentrate", "A", "{'sulfite_g_per_l':110,'sulfite_doubt_g_per_l':10}");
    shelved("concentrate", "B", "{}");
    JsonNode bath =
        ok(
            201,
            "POST",
            "/api/baths",
            "{'name':'evening','litres':1.1,'dilution':'1+1+20','concentrates':['A','B']}");
    JsonNode c = bath.path("contents");
    assertEquals(1.1, c.path("litres").asDouble(), 1e-9);
    assertEquals(50, c.path("concentrates").path(0).path("millilitres").asDouble(), 1e-9);
    assertEquals(1.0 / 22, c.path("concentrates").path(1).path("share").asDouble(), 1e-4);
    assertEquals(5, c.path("sulfite_g_per_l").asDouble(), 1e-9);
    assertTrue(c.path("sulfite_give_or_take_g_per_l").asDouble() > 10.0 / 22, c.toString());
    assertTrue(bath.path("in_tray").asBoolean());
    assertEquals("evening", ok(200, "GET", "/api/in-tray", "").path("bath").path("name").asText());
  }

  @Test
  void aMakeUpOnTheShelfMakesTheSameBathAgain() throws Exception {
    shelved("concentrate", "A", "{}");
    long id =
        shelved("make-up", "usual", "{'litres':2,'dilution':'1+7','concentrates':'A'}")
            .path("id")
            .asLong();
    JsonNode bath = ok(201, "POST", "/api/baths", "{'name':'x','make_up':" + id + "}");
    assertEquals(0.125, bath.path("contents").path("strength").asDouble(), 1e-9);
    assertEquals(2, bath.path("contents").path("litres").asDouble(), 1e-9);
    problem(400, "POST", "/api/baths", "{'name':'x','make_up':99}");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{'name':'x','litres':1,'dilution':'1:7','concentrates':['A']}|dilution|1+7",
        "{'name':'x','litres':1,'dilution':'1+7','concentrates':['none']}|what|water",
        "{'name':'x','litres':1,'dilution':'1+1+20','concentrates':['A']}|concentrates|2 names",
        "{'name':'x','dilution':'1+7','concentrates':['A']}|litres|more than 0",
        "{'name':'x','litres':-1}|litres|0 to 20",
        "{'name':'x','parts':[{'what':'water','millilitres':-1}]}|millilitres|more than 0",
        "{'name':'x','parts':[{'what':'water','millilitres':1,'celsius':120}]}|celsius|0 to 100",
        "{'name':'x','parts':[{'from':9,'millilitres':1}]}|from|another bath",
        "{'name':'x','surprise':1}|surprise|name",
      })
  void aBathThatCannotBeIsRefusedAndNothingIsStored(String body, String field, String accepted)
      throws Exception {
    shelved("concentrate", "A", "{}");
    JsonNode problem = problem(400, "POST", "/api/baths", body);
    assertEquals(field, problem.path("field").asText());
    assertTrue(problem.path("accepted").asText().contains(accepted), problem.toString());
    assertEquals(0, ok(200, "GET", "/api/baths", "").size());
    assertEquals(0, page.log.counts().additions());
  }

  @Test
  void whatIsPouredIntoTheTrayIsToldToTheController() throws Exception {
    ok(201, "POST", "/api/baths", "{'name':'x','litres':1}");
    JsonNode made = ok(201, "POST", "/api/baths/1/additions", "{'what':'water','millilitres':150}");
    assertEquals("told", made.path("controller").asText());
    assertEquals(List.of(0.15), page.tray.poured);
    ok(201, "POST", "/api/baths/1/additions", "{'kind':'level-read','millilitres':1100}");
    assertEquals(1.1, page.tray.confirmed.get(0).orElseThrow(), 1e-12);
    ok(201, "POST", "/api/baths/1/additions", "{'kind':'poured-away','millilitres':100}");
    assertEquals(1.0, contents(1).path("litres").asDouble(), 1e-9);
    // While it is off a bath is being made up: what is declared or confirmed counts.
    page.tray.state = "OFF";
    ok(201, "POST", "/api/baths/1/additions", "{'what':'water','millilitres':20}");
    assertEquals(1, page.tray.poured.size());
    assertEquals(0.95, ok(200, "GET", "/api/in-tray", "").path("controller_litres").asDouble());
    page.tray.state = "HOLDING";
    // Of what stands in a bottle the controller knows nothing.
    ok(200, "PUT", "/api/in-tray", "{'bath':null}");
    ok(201, "POST", "/api/baths/1/additions", "{'what':'water','millilitres':50}");
    assertEquals(1, page.tray.poured.size());
  }

  /** Hot liquid needs proven air as heat does; what is poured all the same is kept, and warned. */
  @Test
  @Verifies(value = "SR-27", side = Verifies.Side.WITHHOLDS)
  void hotLiquidIsConfirmedWhereAirIsNotProvenAndKeptAsAFact() throws Exception {
    ok(201, "POST", "/api/baths", "{'name':'x','litres':1}");
    page.tray.fanProven = false;
    String hot = "{'what':'water','millilitres':300,'celsius':45}";
    JsonNode refused = problem(409, "POST", "/api/baths/1/additions", hot);
    assertTrue(refused.hasNonNull("confirm"), refused.toString());
    assertTrue(refused.path("detail").asText().contains("air is not proven"), refused.toString());
    assertEquals(0, page.log.counts().additions());
    JsonNode kept =
        ok(
            201,
            "POST",
            "/api/baths/1/additions",
            "{'what':'water','millilitres':300,'celsius':45,'confirmed':true}");
    assertTrue(kept.path("warning").asText().contains("leave and air the room"), kept.toString());
    assertEquals(45, kept.path("celsius").asDouble());
  }

  @Test
  @Verifies(value = "SR-27", side = Verifies.Side.ALLOWS)
  void hotLiquidIsPouredWithoutAskingWhereAirIsProvenAndColdLiquidAnywhere() throws Exception {
    ok(201, "POST", "/api/baths", "{'name':'x','litres':1}");
    String hot = "{'what':'water','millilitres':300,'celsius':45}";
    JsonNode airy = ok(201, "POST", "/api/baths/1/additions", hot);
    assertTrue(airy.path("warning").isMissingNode(), airy.toString());
    page.tray.fanProven = false;
    ok(201, "POST", "/api/baths/1/additions", "{'what':'water','millilitres':9,'celsius':30}");
  }

  @Test
  void aSlipIsCorrectedAndStaysInSight() throws Exception {
    ok(201, "POST", "/api/baths", "{'name':'x','litres':1}");
    long id =
        ok(201, "POST", "/api/baths/1/additions", "{'what':'bromide 10 %','millilitres':80}")
            .path("id")
            .asLong();
    JsonNode bath = ok(200, "PATCH", "/api/baths/1/additions/" + id, "{'millilitres':8}");
    assertEquals(0.79365, bath.path("contents").path("bromide_g_per_l").asDouble(), 1e-4);
    assertEquals("80.0", bath.path("history").path(0).path("was").asText());
    problem(400, "PATCH", "/api/baths/1/additions/" + id, "{'millilitres':-8}");
    problem(400, "PATCH", "/api/baths/1/additions/" + id, "{'what':'unheard of'}");
    bath = ok(200, "DELETE", "/api/baths/1/additions/" + id, "");
    assertEquals(0, bath.path("contents").path("bromide_g_per_l").asDouble());
    assertEquals(2, bath.path("history").size());
    problem(400, "DELETE", "/api/baths/1/additions/" + id, "");
  }

  @Test
  void aTimeThatHasNotBeenIsRefused() throws Exception {
    ok(201, "POST", "/api/baths", "{'name':'x','litres':1}");
    JsonNode problem =
        problem(
            400,
            "POST",
            "/api/baths/1/additions",
            "{'what':'water','millilitres':5,'at':'2099-01-01T00:00:00Z'}");
    assertEquals("at", problem.path("field").asText());
    problem(400, "POST", "/api/baths/1/additions", "{'what':'water','millilitres':5,'at':'noon'}");
  }

  @Test
  void whatWasPouredOfLateIsOfferedAgain() throws Exception {
    ok(201, "POST", "/api/baths", "{'name':'x','litres':1}");
    for (String ml : List.of("50", "30", "50")) {
      ok(201, "POST", "/api/baths/1/additions", "{'what':'water','millilitres':" + ml + "}");
    }
    JsonNode again = ok(200, "GET", "/api/in-tray", "").path("again");
    assertEquals(2, again.size());
    assertEquals(50, again.path(0).path("millilitres").asDouble());
  }

  @Test
  void theShelfTakesWhatItsKindHasAndNothingElse() throws Exception {
    JsonNode paper =
        shelved("paper", "Bark & <b>Moss</b>", "{'pull_early_s':4,'behaviour':'gains in the fix'}");
    assertEquals("Bark & <b>Moss</b>", paper.path("name").asText());
    assertEquals(4, paper.path("fields").path("pull_early_s").asDouble());
    long id = paper.path("id").asLong();
    JsonNode changed = ok(200, "PATCH", "/api/shelf/" + id, "{'fields':{'pull_early_s':6}}");
    assertEquals("gains in the fix", changed.path("fields").path("behaviour").asText());
    assertEquals("4", changed.path("history").path(0).path("was").asText());
    problem(400, "POST", "/api/shelf", "{'kind':'paper','name':'bark & <B>moss</B>'}");
    problem(400, "POST", "/api/shelf", "{'kind':'camera','name':'x'}");
    problem(400, "PATCH", "/api/shelf/" + id, "{'fields':{'pull_early_s':-1}}");
    problem(400, "PATCH", "/api/shelf/" + id, "{'fields':{'colour':'warm'}}");
    String nothing = "{'kind':'make-up','name':'x','fields':{'dilution':'0+7'}}";
    assertEquals("dilution", problem(400, "POST", "/api/shelf", nothing).path("field").asText());
    problem(404, "GET", "/api/shelf/99", "");
    ok(200, "DELETE", "/api/shelf/" + id, "");
    assertEquals(0, ok(200, "GET", "/api/shelf", "").path("items").size());
    assertTrue(ok(200, "GET", "/api/shelf", "").path("kinds").size() >= 5);
  }
}
