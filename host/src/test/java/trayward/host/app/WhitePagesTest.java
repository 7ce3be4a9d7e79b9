package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Every white-light page in a real headless browser: legible, in reach, and text stays text. */
@Tag("full")
class WhitePagesTest {

  private static final String HURT = "<script>window.hurt=1</script><img src=x onerror=hurt=1>";

  @TempDir private Path folder;

  /** Each page and a word of its title. */
  private static Map<String, String> pages() {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("#/prints", "Prints");
    pages.put("#/prints/1", "1");
    pages.put("#/compare?n=1,2", "side by side");
    pages.put("#/baths", "Bath book");
    pages.put("#/baths/2", "bath");
    pages.put("#/shelf", "Shelf");
    pages.put("#/sessions", "Sessions");
    for (String plan : new String[] {"air", "heat", "mix", "exposure", "bath"}) {
      pages.put("#/plans/" + plan, "Plan: " + plan);
    }
    pages.put("#/care", "Maintenance");
    pages.put("#/cautions", "Cautions");
    return pages;
  }

  /** Everything that takes a name or a text is given one that would do harm as markup. */
  private static void filled(RunningTrayward trayward) throws Exception {
    WhiteScenes.shelf(trayward, "make-up " + HURT);
    String named = "{'kind': 'paper', 'name': 'paper %s', 'fields': {'behaviour': '%s'}}";
    WhiteScenes.told(trayward, "POST", "/api/shelf", named.formatted(HURT, HURT));
    WhiteScenes.told(
        trayward, "POST", "/api/shelf", "{'kind': 'concentrate', 'name': '" + HURT + "'}");
    WhiteScenes.told(trayward, "POST", "/api/baths", "{'name': 'first bath', 'make_up': 3}");
    WhiteScenes.told(
        trayward, "POST", "/api/baths", "{'name': 'bath " + HURT + "', 'note': '" + HURT + "'}");
    WhiteScenes.told(trayward, "POST", "/api/baths/2/additions", "{'from': 1, 'millilitres': 200}");
    WhiteScenes.told(
        trayward, "POST", "/api/baths/2/additions", "{'what': '" + HURT + "', 'millilitres': 20}");
    WhiteScenes.told(trayward, "PUT", "/api/in-tray", "{'bath': 2}");
    WhiteScenes.print(trayward, "print " + HURT);
    WhiteScenes.print(trayward, "another");
    String said = "{'paper': '%s', 'verdict_wet': '%s', 'notes': '%s'}";
    WhiteScenes.told(trayward, "PATCH", "/api/prints/1", said.formatted(HURT, HURT, HURT));
    WhiteScenes.told(
        trayward, "POST", "/api/prints/1/steps", "{'kind': 'tone', 'what': '" + HURT + "'}");
    WhiteScenes.told(trayward, "PATCH", "/api/sessions/1", "{'symptoms': '" + HURT + "'}");
    WhiteScenes.told(trayward, "PATCH", "/api/sessions/1", "{'symptoms': 'none " + HURT + "'}");
  }

  @Test
  @Timeout(600)
  void everyPageFitsPhonePanelAndLaptopIsAccessibleAndShowsScriptInNamesAsText() throws Exception {
    try (RunningTrayward trayward = WhiteScenes.trayward(folder)) {
      filled(trayward);
      try (WhiteBrowser browser = new WhiteBrowser(trayward, folder.resolve("profile"))) {
        for (Map.Entry<String, String> page : pages().entrySet()) {
          look(browser, page.getKey(), page.getValue());
        }
        for (String text : List.of("#/prints", "#/prints/1", "#/baths/2", "#/shelf")) {
          browser.open(text, pages().getOrDefault(text, ""));
          browser.says("main", HURT);
        }
      }
    }
  }

  private static void look(WhiteBrowser browser, String page, String title) throws Exception {
    browser.size(1280, 800);
    browser.open(page, title);
    browser.until(() -> browser.all("body.unheard").isEmpty(), "the tray is heard");
    browser.script("document.querySelectorAll('main details').forEach(d => { d.open = true; })");
    browser.accessible(page);
    String name = "white" + page.replaceAll("[^a-z0-9]+", "-");
    int[][] sizes = {{1280, 800}, {800, 480}, {390, 844}};
    for (int[] size : sizes) {
      browser.size(size[0], size[1]);
      browser.fits(page + " at " + size[0]);
      browser.picture(name + "-" + size[0]);
    }
    assertEquals("null", browser.script("return window.hurt"), page + " ran a name as script");
    assertTrue(browser.all("main img[src='x'], main script").isEmpty(), page);
  }
}
