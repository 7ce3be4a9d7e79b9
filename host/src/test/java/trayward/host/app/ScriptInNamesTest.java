package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Script in every name a person can give, looked at in a real headless browser. */
@Tag("full")
class ScriptInNamesTest {

  /** Runs where it is taken for markup, whichever way: as an element, out of an attribute. */
  private static final String NASTY =
      "\"><img src=x onerror=\"window.owned=1\"><script>window.owned=1</script>";

  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  private RunningTrayward withNames(String name) throws Exception {
    Path config =
        Files.writeString(
            folder.resolve("names.toml"),
            "[server]\nport = 0\n[log]\nfolder = '%s'\n".formatted(folder.resolve("data")));
    RunningTrayward trayward = RunningTrayward.start(config);
    made(trayward, "/api/baths", JSON.createObjectNode().put("name", name).put("litres", 1));
    made(trayward, "/api/prints", JSON.createObjectNode().put("title", name));
    made(trayward, "/api/marks", JSON.createObjectNode().put("kind", "pull"));
    ObjectNode words = JSON.createObjectNode().put("notes", name).put("paper", name);
    assertEquals(200, trayward.send("PATCH", "/api/prints/1", words.toString()).statusCode());
    made(trayward, "/api/prints", JSON.createObjectNode().put("title", name));
    return trayward;
  }

  private static void made(RunningTrayward trayward, String path, ObjectNode body)
      throws Exception {
    var answer = trayward.send("POST", path, body.toString());
    assertEquals(201, answer.statusCode(), answer.body());
  }

  private static void look(DarkBrowser browser, RunningTrayward trayward, String path, String name)
      throws Exception {
    browser.driver.get("about:blank");
    browser.driver.get(trayward.page().resolve(path).toString());
    String shown =
        "(document.body.innerText + [...document.querySelectorAll('input, textarea')]"
            + ".map((e) => e.value).join())";
    browser.awaitTrue(shown + ".includes(" + JSON.writeValueAsString(name) + ")");
    assertEquals(
        "undefined 0",
        browser.driver.executeScript(
            "return typeof window.owned + ' ' + document.querySelectorAll('img[src=x]').length"),
        path);
  }

  @Test
  @Timeout(300)
  void aNameIsShownAsItIsOnEveryPageAndNeverRuns() throws Exception {
    try (RunningTrayward trayward = withNames(NASTY);
        DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
      browser.room(1280, 800);
      for (String path :
          new String[] {
            "/white.html#/prints",
            "/white.html#/prints/1",
            "/white.html#/baths",
            "/white.html#/baths/1"
          }) {
        look(browser, trayward, path, NASTY);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/white.html#/plans", "/white.html#/sessions"})
  @Timeout(300)
  void aPageOfWhichNobodyKnowsWhetherItShowsANameDoesNotRunItEither(String path) throws Exception {
    try (RunningTrayward trayward = withNames(NASTY);
        DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
      browser.driver.get(trayward.page().resolve(path).toString());
      browser.awaitTrue("document.body.innerText.length > 40");
      assertEquals("undefined", browser.driver.executeScript("return typeof window.owned"));
    }
  }
}
