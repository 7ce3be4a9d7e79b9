package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.interactions.Actions;

/** The dark page in a real headless browser against the real program: a session by clicks. */
class DarkPageTest {

  @TempDir private Path folder;

  private RunningTrayward trayward() throws Exception {
    Path config =
        Files.writeString(
            folder.resolve("page.toml"),
            """
            [tray]
            start_c = 33
            liquid_l = 0.5
            heater_w = 250
            [fan]
            spin_down_s = 1
            [control]
            set_c = 34
            [limits]
            purge_s = 10
            contact_test_s = 15
            proving_s = 2
            [server]
            port = 0
            [log]
            folder = "%s/data"
            """
                .formatted(folder));
    return RunningTrayward.start(config);
  }

  @Test
  @Tag("full")
  @Timeout(180)
  void aSessionByClicksWithNoGreenOrBlueInAnyPixel() throws Exception {
    try (RunningTrayward trayward = trayward()) {
      try (DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
        browser.room(800, 480);
        browser.driver.get(trayward.page().toString());
        browser.awaitText("state", "off");
        browser.pure("page-off");
        assertTrue(browser.find("simulated").isDisplayed(), "it says SIMULATED");
        browser.find("start").click();
        browser.awaitText("state", "purging");
        browser.pure("page-purging");
        browser.awaitText("state", "holding", "heating");
        browser.awaitText("fan", "proven");
        browser.find("in").click();
        trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 3);
        browser.find("emergence").click();
        trayward.await(s -> s.path("current_print").path("marks").size() == 2);
        browser.pure("page-print");
        browser.find("pull").click();
        trayward.await(s -> s.path("current_print").isNull() && s.path("last_print").isObject());
        browser.find("stop").click();
        browser.awaitText("state", "after-run");
        browser.pure("page-after-run");
      }
      assertEquals(3, trayward.json("GET", "/api/prints", "").path(0).path("marks").size());
    }
  }

  /** SR-23, SR-28: a start that must be confirmed, and a level that is low, by clicks. */
  @Test
  @Timeout(180)
  void anOverdueStartIsConfirmedAndAPourIsToldByClicks() throws Exception {
    Path data = Files.createDirectories(folder.resolve("data"));
    Files.writeString(data.resolve("controller-upkeep.txt"), "torn");
    try (RunningTrayward trayward = trayward()) {
      try (DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
        browser.room(800, 480);
        browser.driver.get(trayward.page().toString());
        browser.awaitText("upkeep", "ground-fault breaker test");
        browser.find("start").click();
        browser.awaitText("confirm-words", "breaker test was due");
        browser.pure("page-confirm");
        browser.wellLaid("page-confirm");
        browser.find("start-anyway").click();
        browser.awaitText("state", "proving", "purging");
        trayward.json("POST", "/api/upkeep/breaker-test/done", "");
        trayward.json("POST", "/api/commands/confirm-level", "{\"litres\": 0.5}");
        browser.awaitText("liquid", "0.50");
        browser.find("stop").click();
        browser.awaitText("state", "off", "after-run");
      }
      JsonNode upkeep = trayward.json("GET", "/api/upkeep", "");
      assertEquals(false, upkeep.path("start_needs_confirmation").asBoolean());
    }
  }

  /** SR-12: a lockout says how soon to act, and its life is in the record of alarms. */
  @Test
  @Timeout(180)
  void aLockoutSaysHowSoonToActAndIsOnRecordAfterwards() throws Exception {
    Path data = Files.createDirectories(folder.resolve("data"));
    Files.writeString(data.resolve("controller-keep.txt"), "torn");
    try (RunningTrayward trayward = trayward()) {
      try (DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
        browser.room(800, 480);
        browser.driver.get(trayward.page().toString());
        browser.awaitText("alarm-priority", "act before the next print");
        browser.pure("page-lockout");
        browser.wellLaid("page-lockout");
        browser.find("acknowledge").click();
        trayward.await(
            s -> s.path("alarms").path(0).path("state").asText().startsWith("LATCHED_A"));
        browser.find("reset").click();
        browser.awaitText("state", "off");
      }
      JsonNode record = trayward.json("GET", "/api/alarms?most=1", "");
      assertEquals("STORE_FAILED", record.path("steps").path(0).path("name").asText());
      assertEquals("NORMAL", record.path("steps").path(0).path("state").asText());
      assertTrue(record.path("alarm_record_ok").asBoolean());
    }
  }

  /** A simulated probe that reads 0.8 K high is put right by clicks, and its doubt becomes less. */
  @Test
  @Tag("full")
  @Timeout(180)
  void aProbeThatReadsHighIsPutRightByClicks() throws Exception {
    Path config =
        Files.writeString(
            folder.resolve("high.toml"),
            """
            [tray]
            start_c = 20
            liquid_l = 4
            [bath_probe]
            offset_k = 0.8
            [server]
            port = 0
            [log]
            folder = "%s/data"
            """
                .formatted(folder));
    try (RunningTrayward trayward = RunningTrayward.start(config)) {
      try (DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
        browser.room(800, 480);
        browser.driver.get(trayward.page().toString());
        browser.awaitText("bath", "± 0.5");
        browser.pure("page-doubt");
        browser.find("probes-open").click();
        browser.awaitText("probe-words", "it stands still");
        browser.awaitText("probe-words", "± 0.5 as bought");
        JsonNode before = trayward.json("GET", "/api/probes", "").path("probes").path(0);
        assertEquals(20.8, before.path("raw_c").asDouble(), 0.2);
        for (int i = 0; i < 8; i++) {
          browser.find("reference-down").click();
        }
        browser.pure("page-probes");
        browser.wellLaid("page-probes");
        browser.find("probe-ice").click();
        browser.awaitText("message", "not taken: the probe read 20.");
        browser.find("reference-take").click();
        browser.awaitText("message", "reference taken");
        browser.awaitText("probe-words", "± 0.1, reference", "± 0.2, reference");
        browser.pure("page-taken");
        JsonNode after = trayward.json("GET", "/api/probes", "").path("probes").path(0);
        assertEquals(20, after.path("corrected_c").asDouble(), 0.2);
        assertTrue(trayward.status().path("bath_uncertainty_k").asDouble() < 0.2);
        browser.find("probes-close").click();
        browser.awaitText("bath", "± 0.1", "± 0.2");
        browser.pure("page-corrected");
        browser.find("probes-open").click();
        browser.awaitText("probe-words", "reference 20");
        browser.find("probe-forget").click();
        browser.awaitText("probe-words", "± 0.5 as bought");
        browser.find("probes-close").click();
        browser.awaitText("bath", "± 0.5");
        browser.room(500, 800);
        browser.pure("page-upright");
        browser.find("start").click();
        browser.awaitText("state", "proving");
        assertTrue(!browser.find("probes-open").isDisplayed(), "in a run not offered");
      }
    }
  }

  /** What is added, told and taken back by hand is in the log and at the controller. */
  @Test
  @Tag("full")
  @Timeout(180)
  void anAdditionByTwoClicksAndAMarkTakenBack() throws Exception {
    try (RunningTrayward trayward = trayward()) {
      JsonNode bath =
          trayward.json("POST", "/api/baths", "{\"name\": \"second brew\", \"litres\": 0.5}");
      long id = bath.path("id").asLong();
      trayward.json("PUT", "/api/in-tray", "{\"bath\": " + id + "}");
      try (DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
        browser.room(800, 480);
        browser.driver.get(trayward.page().toString());
        browser.awaitText("state", "off");
        browser.find("adds-open").click();
        browser.awaitText("adds-words", "second brew: 0.50");
        browser.pure("page-adds-real");
        browser.find("adds-list").findElement(By.tagName("button")).click();
        browser.awaitText("message", "50 ml water added: bath 0.55 l");
        browser.wellLaid("page-added");
        browser.find("start").click();
        browser.awaitText("state", "holding", "heating");
        browser.find("in").click();
        browser.awaitText("print", "print 1");
        browser.find("emergence").click();
        trayward.await(s -> s.path("current_print").path("marks").size() == 2);
        browser.awaitTrue("document.querySelector('#emergence.last') !== null");
        new Actions(browser.driver).clickAndHold(browser.find("emergence")).perform();
        browser.awaitText("message", "emergence of print 1 taken back");
        new Actions(browser.driver).release().perform();
        trayward.await(s -> s.path("current_print").path("marks").size() == 1);
        browser.driver.switchTo().activeElement().sendKeys("u");
        browser.awaitText("message", "in of print 1 taken back", "in taken back");
        browser.awaitText("print", "no print");
        browser.driver.switchTo().activeElement().sendKeys("u");
        browser.awaitText("message", "nothing taken back: there is no mark");
      }
      JsonNode poured = trayward.json("GET", "/api/baths/" + id, "").path("additions").path(0);
      assertEquals("water", poured.path("what").asText());
      assertEquals(50, poured.path("millilitres").asDouble());
    }
  }
}
