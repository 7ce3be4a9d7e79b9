package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The dark page in a real headless browser against the real program: a session by clicks. */
class DarkPageTest {

  /** No green and no blue: paper fogs under both. */
  private static final int MOST_GREEN_OR_BLUE = 8;

  /** The test uses no developer tools, so which of them fits the browser does not matter. */
  private static final Logger TOOLS = Logger.getLogger("org.openqa.selenium.devtools");

  static {
    TOOLS.setLevel(Level.SEVERE);
  }

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

  private static ChromeDriver browser(Path profile) {
    ChromeOptions options = new ChromeOptions();
    options.setBinary("/usr/bin/chromium");
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-dev-shm-usage",
        "--hide-scrollbars",
        "--user-data-dir=" + profile);
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(new java.io.File("/usr/bin/chromedriver"))
            .build();
    return new ChromeDriver(service, options);
  }

  @Test
  @Timeout(180)
  void aSessionByClicksWithNoGreenOrBlueInAnyPixel() throws Exception {
    try (RunningTrayward trayward = trayward()) {
      ChromeDriver browser = browser(folder.resolve("profile"));
      try {
        browser.manage().window().setSize(new Dimension(800, 620));
        browser.get(trayward.page().toString());
        awaitText(browser, "state", "off");
        pure(browser, "page-off");
        assertTrue(browser.findElement(By.id("simulated")).isDisplayed(), "it says SIMULATED");
        browser.findElement(By.id("start")).click();
        awaitText(browser, "state", "purging");
        pure(browser, "page-purging");
        awaitText(browser, "state", "holding", "heating");
        awaitText(browser, "fan", "proven");
        browser.findElement(By.id("in")).click();
        trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 3);
        browser.findElement(By.id("emergence")).click();
        trayward.await(s -> s.path("current_print").path("marks").size() == 2);
        pure(browser, "page-print");
        browser.findElement(By.id("pull")).click();
        trayward.await(s -> s.path("current_print").isNull() && s.path("last_print").isObject());
        browser.findElement(By.id("stop")).click();
        awaitText(browser, "state", "after-run");
        pure(browser, "page-after-run");
      } finally {
        browser.quit();
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
      ChromeDriver browser = browser(folder.resolve("profile"));
      try {
        browser.manage().window().setSize(new Dimension(800, 620));
        browser.get(trayward.page().toString());
        awaitText(browser, "upkeep", "ground-fault breaker test");
        browser.findElement(By.id("start")).click();
        awaitText(browser, "confirm-words", "breaker test was due");
        pure(browser, "page-confirm");
        browser.findElement(By.id("start-anyway")).click();
        awaitText(browser, "state", "proving", "purging");
        trayward.json("POST", "/api/upkeep/breaker-test/done", "");
        trayward.json("POST", "/api/commands/confirm-level", "{\"litres\": 0.5}");
        awaitText(browser, "liquid", "0.50");
        browser.findElement(By.id("stop")).click();
        awaitText(browser, "state", "off", "after-run");
      } finally {
        browser.quit();
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
      ChromeDriver browser = browser(folder.resolve("profile"));
      try {
        browser.manage().window().setSize(new Dimension(800, 620));
        browser.get(trayward.page().toString());
        awaitText(browser, "alarm-priority", "act before the next print");
        pure(browser, "page-lockout");
        browser.findElement(By.id("acknowledge")).click();
        trayward.await(
            s -> s.path("alarms").path(0).path("state").asText().startsWith("LATCHED_A"));
        browser.findElement(By.id("reset")).click();
        awaitText(browser, "state", "off");
      } finally {
        browser.quit();
      }
      JsonNode record = trayward.json("GET", "/api/alarms?most=1", "");
      assertEquals("STORE_FAILED", record.path("steps").path(0).path("name").asText());
      assertEquals("NORMAL", record.path("steps").path(0).path("state").asText());
      assertTrue(record.path("alarm_record_ok").asBoolean());
    }
  }

  /** A simulated probe that reads 0.8 K high is put right by clicks, and its doubt becomes less. */
  @Test
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
      ChromeDriver browser = browser(folder.resolve("profile"));
      try {
        browser.manage().window().setSize(new Dimension(800, 620));
        browser.get(trayward.page().toString());
        awaitText(browser, "bath", "± 0.5");
        pure(browser, "page-doubt");
        browser.findElement(By.id("probes-open")).click();
        awaitText(browser, "probe-words", "it stands still");
        awaitText(browser, "probe-words", "± 0.5 as bought");
        JsonNode before = trayward.json("GET", "/api/probes", "").path("probes").path(0);
        assertEquals(20.8, before.path("raw_c").asDouble(), 0.2);
        for (int i = 0; i < 8; i++) {
          browser.findElement(By.id("reference-down")).click();
        }
        pure(browser, "page-probes");
        browser.findElement(By.id("probe-ice")).click();
        awaitText(browser, "message", "not taken: the probe read 20.");
        browser.findElement(By.id("reference-take")).click();
        awaitText(browser, "message", "reference taken");
        awaitText(browser, "probe-words", "± 0.1, reference", "± 0.2, reference");
        pure(browser, "page-taken");
        JsonNode after = trayward.json("GET", "/api/probes", "").path("probes").path(0);
        assertEquals(20, after.path("corrected_c").asDouble(), 0.2);
        assertTrue(trayward.status().path("bath_uncertainty_k").asDouble() < 0.2);
        browser.findElement(By.id("probes-close")).click();
        awaitText(browser, "bath", "± 0.1", "± 0.2");
        pure(browser, "page-corrected");
        browser.findElement(By.id("probes-open")).click();
        awaitText(browser, "probe-words", "reference 20");
        browser.findElement(By.id("probe-forget")).click();
        awaitText(browser, "probe-words", "± 0.5 as bought");
        browser.findElement(By.id("probes-close")).click();
        awaitText(browser, "bath", "± 0.5");
        browser.manage().window().setSize(new Dimension(500, 900));
        pure(browser, "page-upright");
        browser.findElement(By.id("start")).click();
        awaitText(browser, "state", "proving");
        assertTrue(
            !browser.findElement(By.id("probes-open")).isDisplayed(), "in a run not offered");
      } finally {
        browser.quit();
      }
    }
  }

  private static void awaitText(ChromeDriver browser, String id, String... any) {
    new WebDriverWait(browser, Duration.ofMinutes(2))
        .until(
            driver -> {
              String text =
                  driver.findElement(By.id(id)).getText().toLowerCase(java.util.Locale.ROOT);
              return java.util.Arrays.stream(any).anyMatch(text::contains);
            });
  }

  /** Takes a picture into the build folder and looks at every pixel. */
  private static void pure(ChromeDriver browser, String name) throws Exception {
    byte[] png = browser.getScreenshotAs(OutputType.BYTES);
    Path pictures = Files.createDirectories(Path.of("target", "pictures"));
    Files.write(pictures.resolve(name + ".png"), png);
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    int worst = 0;
    int brightest = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int rgb = image.getRGB(x, y);
        worst = Math.max(worst, Math.max(rgb >> 8 & 0xff, rgb & 0xff));
        brightest = Math.max(brightest, rgb >> 16 & 0xff);
      }
    }
    assertTrue(worst <= MOST_GREEN_OR_BLUE, name + " has green or blue of " + worst);
    assertTrue(brightest > 200, name + " shows nothing at all");
  }
}
