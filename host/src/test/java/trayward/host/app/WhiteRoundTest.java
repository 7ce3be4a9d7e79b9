package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * White-light pages in a real headless browser against the real program: an evening's desk work.
 */
@Tag("full")
class WhiteRoundTest {

  @TempDir private Path folder;

  @Test
  @Timeout(300)
  void fromAMakeUpOnTheShelfToTwoPrintsSideBySide() throws Exception {
    try (RunningTrayward trayward = WhiteScenes.trayward(folder)) {
      WhiteScenes.shelf(trayward, "Weak and warm");
      try (WhiteBrowser browser = new WhiteBrowser(trayward, folder.resolve("profile"))) {
        newBath(browser, trayward);
        WhiteScenes.print(trayward, "Harbour wall");
        WhiteScenes.print(trayward, "Lime kiln, dusk");
        record(browser, trayward);
        correctedMark(browser, trayward);
        repeated(browser);
        found(browser);
        compared(browser);
        hotPourIsAsked(browser, trayward);
      }
    }
  }

  private static void newBath(WhiteBrowser browser, RunningTrayward trayward) throws Exception {
    browser.open("", "Prints");
    browser.press("nav a[href='#/baths']");
    browser.title("Bath book");
    String form = browser.part("New bath");
    browser.press(form + "button[type='submit']");
    browser.says(form + ".error", "1 to 80 characters");
    browser.fill(form + "[name='name']", "November bath");
    browser.press(form + "button[type='submit']");
    browser.title("November bath");
    browser.says(".tag", "in the tray");
    JsonNode bath = trayward.json("GET", "/api/in-tray", "").path("bath");
    assertEquals("November bath", bath.path("name").asText());
    assertEquals(0.5, bath.path("litres_now").asDouble(), 0.01);
    browser.says(browser.part("Book") + "table", "Part B");
  }

  private void record(WhiteBrowser browser, RunningTrayward trayward) throws Exception {
    browser.open("#/prints", "Prints");
    browser.press("[data-print='1'] h2 a");
    browser.title("Harbour wall");
    browser.says(browser.part("Bath at this print"), "November bath");
    assertTrue(browser.all(browser.part("Temperature") + "canvas").size() == 1, "a trace is drawn");
    String form = browser.part("Record");
    browser.fill(form + "[name='aperture']", "wide");
    browser.press(form + "button[type='submit']");
    browser.says(form + ".error", "Accepted: 1 to 128");
    browser.fill(form + "[name='aperture']", "8");
    browser.fill(form + "[name='paper']", "Old matt fibre");
    browser.fill(form + "[name='verdict_wet']", "blacks went fast");
    browser.press(form + "button[type='submit']");
    browser.says("#said", "Record saved");
    browser.until(
        () -> browser.all("datalist option[value='Old matt fibre']").size() == 1, "remembered");
    JsonNode record = trayward.json("GET", "/api/prints/1", "").path("record");
    assertEquals("blacks went fast", record.path("verdict_wet").asText());
    assertEquals(8, record.path("aperture").asDouble());
    browser.find("#picture").sendKeys(WhiteScenes.picture(folder).toString());
    browser.press(browser.part("Pictures") + "button[type='submit']");
    browser.until(
        () ->
            browser
                .script(
                    "const i = document.querySelector('.pictures img');"
                        + " return i !== null && i.complete && i.naturalWidth > 0")
                .equals("true"),
        "the picture is seen small");
    step(browser, trayward);
  }

  private static void step(WhiteBrowser browser, RunningTrayward trayward) throws Exception {
    String steps = browser.part("After the developer");
    browser.choose(steps + "[name='kind']", "tone");
    browser.says(steps + ".caution", "hydrogen sulfide");
    browser.fill(steps + "[name='seconds']", "2:00");
    browser.press(steps + "button[type='submit']");
    browser.says(steps + ".steps", "tone, 2:00");
    JsonNode made = trayward.json("GET", "/api/prints/1", "").path("steps").path(0);
    assertEquals(120, made.path("seconds").asDouble());
  }

  private static void correctedMark(WhiteBrowser browser, RunningTrayward trayward)
      throws Exception {
    String emergence = browser.part("Marks") + "li:nth-child(2) ";
    browser.fill(emergence + "input", "0:75");
    browser.press(emergence + "button");
    browser.says(emergence + ".error", "such as 3:12");
    browser.fill(browser.part("Record") + "[name='faults']", "a hair, lower left");
    browser.fill(emergence + "input", "0:02");
    browser.press(emergence + "button");
    browser.says(emergence + "h3 b", "0:02");
    String faults = browser.part("Record") + "[name='faults']";
    String unsaved = String.valueOf(browser.find(faults).getDomProperty("value"));
    assertEquals("a hair, lower left", unsaved, "what is not saved yet stays");
    JsonNode print = trayward.json("GET", "/api/prints/1", "");
    assertEquals(2, print.path("summary").path("emergence_s").asDouble(), 1e-3);
    browser.press(browser.part("History") + "summary");
    browser.says(browser.part("History"), "emergence");
    browser.press(".zoom button:first-child");
    browser.picture("white-print");
  }

  private static void repeated(WhiteBrowser browser) {
    String repeat = browser.part("Repeat this print");
    browser.fill(repeat + "[name='magnification']", "thousands");
    browser.press(repeat + "button[type='submit']");
    browser.says(repeat + ".error", "Accepted: 0.05 to 200");
    browser.fill(repeat + "[name='magnification']", "7");
    browser.press(repeat + "button[type='submit']");
    browser.says(repeat + ".answer", "Asked to repeat");
    browser.says(repeat + ".lines", "set temperature");
  }

  private static void found(WhiteBrowser browser) throws Exception {
    browser.press("nav a[href='#/prints']");
    browser.title("Prints");
    browser.says("[data-print='1']", "blacks went fast");
    browser.until(() -> browser.all("[data-print='1'] .picture img").size() == 1, "its picture");
    browser.picture("white-prints");
    browser.fill("#q", "kiln");
    browser.press(".search button");
    browser.until(() -> browser.all("[data-print]").size() == 1, "one print is found");
    browser.says("[data-print='2']", "Lime kiln");
    browser.press(".search a");
    browser.until(() -> browser.all("[data-print]").size() == 2, "both again");
  }

  private static void compared(WhiteBrowser browser) throws Exception {
    browser.press("#c1");
    browser.press("#c2");
    browser.press(".compare-bar a");
    browser.title("Prints 1, 2 side by side");
    browser.says("table", "Old matt fibre");
    browser.says("table", "November bath");
    browser.picture("white-compare");
  }

  private static void hotPourIsAsked(WhiteBrowser browser, RunningTrayward trayward)
      throws Exception {
    browser.open("#/baths/1", "November bath");
    String form = browser.part("Add a line");
    browser.fill(form + "[name='what']", "water");
    browser.fill(form + "[name='millilitres']", "100");
    browser.fill(form + "[name='celsius']", "45");
    browser.press(form + "button[type='submit']");
    browser.says(form + ".question", "Air is not proven");
    int before = trayward.json("GET", "/api/baths/1", "").path("additions").size();
    browser.press(form + ".question button");
    browser.says("p.caution", "Warning: air is not proven");
    JsonNode after = trayward.json("GET", "/api/baths/1", "").path("additions");
    assertEquals(before + 1, after.size());
    browser.picture("white-baths");
  }
}
