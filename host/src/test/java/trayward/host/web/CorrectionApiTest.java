package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class CorrectionApiTest {

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

  private JsonNode correct(String kind, String elapsedS) throws Exception {
    String body = "{\"elapsed_s\":" + elapsedS + "}";
    return page.ok(200, "PATCH", "/api/prints/1/marks/" + kind, body);
  }

  @Test
  void theNewestMarkIsTakenBackOneByOne() throws Exception {
    page.problem(409, "POST", "/api/marks/undo", "");
    page.mark("in", 10);
    page.mark("pull", 100);
    JsonNode undone = page.ok(200, "POST", "/api/marks/undo", "");
    assertEquals("pull", undone.path("undone").asText());
    assertTrue(undone.path("print").path("in_progress").asBoolean());
    JsonNode history = undone.path("print").path("history").path(0);
    assertEquals("90.0 s", history.path("was").asText());
    JsonNode gone = page.ok(200, "POST", "/api/marks/undo", "{}");
    assertEquals("in", gone.path("undone").asText());
    assertTrue(gone.path("print").isNull(), "with its in the print is gone");
    page.problem(404, "GET", "/api/prints/1", "");
    page.problem(409, "POST", "/api/marks/undo", "");
    page.problem(400, "POST", "/api/marks/undo", "{\"kind\":\"in\"}");
  }

  @Test
  void aMarkIsPutRightAndAForgottenOneEntered() throws Exception {
    page.mark("in", 10);
    page.mark("pull", 210);
    JsonNode print = correct("pull", "190");
    assertEquals(190, print.path("summary").path("pull_s").asDouble());
    assertEquals("api", print.path("marks").path(1).path("by").asText());
    JsonNode with = correct("emergence", "120.5");
    assertEquals("page", with.path("marks").path(1).path("by").asText());
    assertEquals(120.5, with.path("summary").path("emergence_s").asDouble());
    assertEquals(2, with.path("history").size());
    JsonNode later = correct("in", "2");
    assertEquals(188, later.path("summary").path("pull_s").asDouble());
  }

  @Test
  void whatCannotHaveBeenIsRefused() throws Exception {
    page.mark("in", 10);
    page.logbook.nowS = 100;
    String pull = "/api/prints/1/marks/pull";
    assertEquals("elapsed_s", page.wrongField("PATCH", pull, "{\"elapsed_s\":-1}"));
    assertEquals("elapsed_s", page.wrongField("PATCH", pull, "{\"elapsed_s\":21601}"));
    assertEquals("elapsed_s", page.wrongField("PATCH", pull, "{\"elapsed_s\":\"90\"}"));
    assertEquals("elapsed_s", page.wrongField("PATCH", pull, "{}"));
    assertEquals("kind", page.wrongField("PATCH", "/api/prints/1/marks/out", "{}"));
    JsonNode early = page.problem(409, "PATCH", pull, "{\"elapsed_s\":90.5}");
    assertTrue(early.path("detail").asText().contains("not come yet"));
    page.problem(404, "PATCH", "/api/prints/2/marks/pull", "{\"elapsed_s\":1}");
    assertFalse(correct("pull", "90").path("in_progress").asBoolean());
    page.mark("in", 150);
    page.problem(409, "PATCH", pull, "{\"elapsed_s\":141}");
    correct("pull", "140");
    page.problem(409, "PATCH", "/api/prints/1/marks/emergence", "{\"elapsed_s\":141}");
  }

  @Test
  void symptomsOfASessionAreKeptWithTheirHistory() throws Exception {
    page.ok(201, "POST", "/api/sessions", "");
    String nasty = "headache'; <script>alert(1)</script>";
    page.ok(200, "PATCH", "/api/sessions/1", "{\"symptoms\":\"a smell\"}");
    page.ok(200, "PATCH", "/api/sessions/1", "{\"symptoms\":\"" + nasty + "\"}");
    JsonNode session = page.ok(200, "GET", "/api/sessions", "").path(0);
    assertEquals(nasty, session.path("symptoms").asText());
    assertEquals("a smell", session.path("history").path(1).path("was").asText());
    String long2001 = "{\"symptoms\":\"" + "x".repeat(2001) + "\"}";
    assertEquals("symptoms", page.wrongField("PATCH", "/api/sessions/1", long2001));
    assertEquals("symptoms", page.wrongField("PATCH", "/api/sessions/1", "{}"));
    page.problem(404, "PATCH", "/api/sessions/9", "{\"symptoms\":\"x\"}");
    JsonNode none = page.ok(200, "PATCH", "/api/sessions/1", "{\"symptoms\":null}");
    assertEquals("", none.path("symptoms").asText());
  }
}
