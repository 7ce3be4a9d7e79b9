package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.PrintField;

@Timeout(60)
class PrintApiTest {

  @TempDir private Path folder;
  private LocalPage page;

  @BeforeEach
  void start() throws Exception {
    page = new LocalPage(folder);
    page.mark("in", 10);
  }

  @AfterEach
  void stop() {
    page.close();
  }

  private JsonNode patch(String body) throws Exception {
    return page.ok(200, "PATCH", "/api/prints/1", body);
  }

  @Test
  void aRecordIsSaidChangedAndRemoved() throws Exception {
    JsonNode print =
        patch(
            "{\"title\":\"Pier\",\"paper\":\"warm matt\",\"aperture\":8.0,\"stops_over\":\"2.5\"}");
    assertEquals("Pier", print.path("title").asText());
    assertEquals("warm matt", print.path("record").path("paper").asText());
    assertTrue(print.path("record").path("aperture").isNumber());
    assertEquals(8, print.path("record").path("aperture").asDouble());
    assertEquals(2.5, print.path("record").path("stops_over").asDouble());
    JsonNode less = patch("{\"paper\":null,\"aperture\":\"\",\"title\":null}");
    assertEquals("{\"stops_over\":2.5}", less.path("record").toString());
    assertEquals("", less.path("title").asText());
    JsonNode last = less.path("history").path(4);
    assertEquals("warm matt", last.path("was").asText(), less.path("history").toString());
    assertEquals("", last.path("became").asText());
    assertEquals(less, page.ok(200, "GET", "/api/prints/1", ""));
    assertEquals(
        less.path("record"), page.ok(200, "GET", "/api/prints", "").path(0).path("record"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "aperture|{\"paper\":\"matt\",\"aperture\":0.5}",
        "aperture|{\"paper\":\"matt\",\"aperture\":\"f/8\"}",
        "aperture|{\"paper\":\"matt\",\"aperture\":1e999}",
        "aperture|{\"paper\":\"matt\",\"aperture\":true}",
        "stops_over|{\"paper\":\"matt\",\"stops_over\":16}",
        "paper|{\"notes\":\"n\",\"paper\":[\"matt\"]}",
        "colour|{\"paper\":\"matt\",\"colour\":\"red\"}",
        "body|{\"paper\":",
      })
  void aWrongFieldIsNamedAndNothingIsStored(String field, String body) throws Exception {
    assertEquals(field, page.wrongField("PATCH", "/api/prints/1", body));
    JsonNode print = page.ok(200, "GET", "/api/prints/1", "");
    assertEquals("{}", print.path("record").toString());
    assertEquals("[]", print.path("history").toString());
    assertEquals("", print.path("notes").asText());
  }

  @Test
  void queriesAndScriptInAnyFieldComeBackAsPlainText() throws Exception {
    String nasty = "'; DROP TABLE prints; --<script>alert(\"1\")</script>\u0000${7*7}";
    ObjectNode body = new ObjectMapper().createObjectNode();
    body.put("title", nasty).put("notes", nasty);
    for (PrintField field : PrintField.values()) {
      if (field.number()) {
        assertEquals(
            field.word(),
            page.wrongField(
                "PATCH",
                "/api/prints/1",
                new ObjectMapper().createObjectNode().put(field.word(), nasty).toString()));
      } else {
        body.put(field.word(), nasty);
      }
    }
    JsonNode print = patch(body.toString());
    for (PrintField field : PrintField.values()) {
      if (!field.number()) {
        assertEquals(nasty, print.path("record").path(field.word()).asText(), field.word());
      }
    }
    assertEquals(nasty, print.path("title").asText());
    JsonNode step =
        page.ok(
            201,
            "POST",
            "/api/prints/1/steps",
            new ObjectMapper()
                .createObjectNode()
                .put("kind", "tone")
                .put("what", nasty)
                .toString());
    assertEquals(nasty, step.path("what").asText());
    assertEquals(1, found("q", nasty).size());
  }

  private List<Integer> found(String... namesAndValues) throws Exception {
    StringBuilder query = new StringBuilder("/api/prints?");
    for (int i = 0; i < namesAndValues.length; i += 2) {
      query.append(namesAndValues[i]).append('=');
      query.append(URLEncoder.encode(namesAndValues[i + 1], StandardCharsets.UTF_8)).append('&');
    }
    List<Integer> ids = new ArrayList<>();
    page.ok(200, "GET", query.toString(), "").forEach(p -> ids.add(p.path("id").asInt()));
    return ids;
  }

  @Test
  void printsAreFoundByWordsAndByFields() throws Exception {
    page.mark("in", 100);
    page.mark("in", 200);
    patch("{\"title\":\"ferry\",\"paper\":\"matt\",\"aperture\":8}");
    page.ok(200, "PATCH", "/api/prints/3", "{\"notes\":\"ferry again\",\"paper\":\"gloss\"}");
    assertEquals(List.of(3, 1), found("q", "FERRY"));
    assertEquals(List.of(1), found("q", "ferry", "paper", "matt"));
    assertEquals(List.of(1), found("aperture", "8.0"));
    assertEquals(List.of(), found("paper", "mat"));
    assertEquals(List.of(3, 2, 1), found("q", ""));
    assertEquals(List.of(1), found("q", "ferry", "limit", "1", "offset", "1"));
    assertEquals(List.of(), found("q", "\" OR ferry NOT \""));
    assertEquals("q", page.wrongField("GET", "/api/prints?q=" + "x".repeat(201), ""));
    assertEquals("aperture", page.wrongField("GET", "/api/prints?aperture=wide", ""));
  }

  @Test
  void theTableOfFieldsMakesAForm() throws Exception {
    patch("{\"paper\":\"matt\",\"faults\":\"pepper\"}");
    page.mark("in", 100);
    page.ok(200, "PATCH", "/api/prints/2", "{\"paper\":\"gloss\"}");
    JsonNode table = page.ok(200, "GET", "/api/print-fields", "");
    assertEquals(PrintField.values().length, table.size());
    for (JsonNode field : table) {
      for (String key :
          List.of("name", "label", "kind", "unit", "least", "most", "remembered", "values")) {
        assertTrue(field.has(key), key);
      }
      String name = field.path("name").asText();
      if (name.equals("paper")) {
        assertTrue(field.path("remembered").asBoolean());
        assertEquals("[\"gloss\",\"matt\"]", field.path("values").toString());
      }
      if (name.equals("aperture")) {
        assertEquals("number", field.path("kind").asText());
        assertEquals(1, field.path("least").asDouble());
        assertEquals(128, field.path("most").asDouble());
      }
      if (name.equals("faults")) {
        assertFalse(field.path("remembered").asBoolean());
        assertEquals(0, field.path("values").size());
      }
    }
  }

  @Test
  void stepsComeWithTheirCautionsAndAreTakenBack() throws Exception {
    JsonNode fix =
        page.ok(
            201,
            "POST",
            "/api/prints/1/steps",
            "{\"kind\":\"fix\",\"seconds\":60,\"dilution\":\"1+4\",\"what\":\"rapid\"}");
    assertEquals(1, fix.path("n").asInt());
    assertTrue(fix.path("cautions").toString().contains("sulfur dioxide"));
    JsonNode tone = page.ok(201, "POST", "/api/prints/1/steps", "{\"kind\":\"tone\"}");
    assertTrue(tone.path("seconds").isNull());
    assertTrue(tone.path("cautions").toString().contains("hydrogen sulfide"));
    JsonNode wash = page.ok(201, "POST", "/api/prints/1/steps", "{\"kind\":\"wash\"}");
    assertEquals(0, wash.path("cautions").size());
    JsonNode print = page.ok(200, "DELETE", "/api/prints/1/steps/2", "");
    assertEquals(2, print.path("steps").size());
    assertEquals("step 2", print.path("history").path(0).path("field").asText());
    page.problem(404, "DELETE", "/api/prints/1/steps/2", "");
    page.problem(404, "DELETE", "/api/prints/9/steps/1", "");
    assertEquals("n", page.wrongField("DELETE", "/api/prints/1/steps/x", ""));
    assertEquals(7, page.ok(200, "GET", "/api/print-steps", "").size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "kind|{}",
        "kind|{\"kind\":\"boil\"}",
        "kind|{\"kind\":3}",
        "seconds|{\"kind\":\"fix\",\"seconds\":-1}",
        "dilution|{\"kind\":\"fix\",\"dilution\":\"1:7\"}",
        "dilution|{\"kind\":\"fix\",\"dilution\":7}",
        "minutes|{\"kind\":\"fix\",\"minutes\":1}",
      })
  void aStepThatMakesNoSenseIsRefused(String field, String body) throws Exception {
    assertEquals(field, page.wrongField("POST", "/api/prints/1/steps", body));
    assertEquals(0, page.ok(200, "GET", "/api/prints/1", "").path("steps").size());
  }

  @Test
  void aColonInADilutionIsRefusedWithTheReason() throws Exception {
    JsonNode problem =
        page.problem(400, "POST", "/api/prints/1/steps", "{\"kind\":\"fix\",\"dilution\":\"1:7\"}");
    assertTrue(problem.path("accepted").asText().contains("1 and 7"), problem.toString());
  }

  @Test
  void theVerdictIsAskedAgainOnceThePrintIsDry() throws Exception {
    long session = page.log.openSession().orElseThrow().id();
    Instant wall = Instant.now().minusSeconds(13 * 3600);
    for (MarkKind kind : List.of(MarkKind.IN, MarkKind.PULL)) {
      double atS = kind == MarkKind.IN ? 100 : 200;
      page.log.mark(kind, session, new Moment(atS, wall), "page", OptionalDouble.empty());
    }
    assertFalse(page.ok(200, "GET", "/api/prints/2", "").path("ask_again").asBoolean());
    page.ok(200, "PATCH", "/api/prints/2", "{\"verdict_wet\":\"blotchy\"}");
    assertTrue(page.ok(200, "GET", "/api/prints/2", "").path("ask_again").asBoolean());
    assertTrue(page.ok(200, "GET", "/api/prints", "").path(0).path("ask_again").asBoolean());
    assertFalse(page.ok(200, "GET", "/api/prints", "").path(1).path("ask_again").asBoolean());
    JsonNode dry = page.ok(200, "PATCH", "/api/prints/2", "{\"verdict_dry\":\"even\"}");
    assertFalse(dry.path("ask_again").asBoolean());
  }

  @Test
  void theDescriptionKnowsEveryField() throws Exception {
    JsonNode description = page.ok(200, "GET", "/api/openapi.json", "");
    JsonNode paths = description.path("paths");
    JsonNode change =
        paths.at("/~1api~1prints~1{id}/patch/requestBody/content/application~1json/schema");
    JsonNode said = description.at("/components/schemas/PrintRecord/properties");
    List<String> asked = new ArrayList<>();
    paths.at("/~1api~1prints/get/parameters").forEach(p -> asked.add(p.path("name").asText()));
    for (PrintField field : PrintField.values()) {
      assertTrue(change.path("properties").has(field.word()), field.word());
      assertTrue(said.has(field.word()), field.word());
      assertTrue(asked.contains(field.word()), field.word());
    }
    assertEquals(PrintField.values().length, said.size());
  }
}
