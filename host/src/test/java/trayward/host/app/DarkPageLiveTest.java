package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.interactions.Actions;

/** Several pages on the real program, one that outlives it, and how fast it all is. */
@Tag("full")
@Timeout(300)
class DarkPageLiveTest {

  /** Changes of the set temperature seen in each of eight pages: enough for a 99th percentile. */
  private static final int CHANGES = 60;

  private static final int PAGES = 8;

  @TempDir private Path folder;
  private Path config;

  @BeforeEach
  void configure() throws Exception {
    int port;
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    config =
        Files.writeString(
            folder.resolve("page.toml"),
            "[server]\nport = " + port + "\n[log]\nfolder = \"" + folder + "/data\"\n");
  }

  private DarkBrowser browser(String name) {
    DarkBrowser browser = new DarkBrowser(folder.resolve(name));
    browser.room(800, 480);
    return browser;
  }

  /** Figures for whoever asks; nothing fails because a computer was slow that day. */
  private static void report(String figure) throws Exception {
    Path file = Files.createDirectories(Path.of("target", "pictures")).resolve("figures.txt");
    Files.writeString(file, figure + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    System.out.println(figure);
  }

  @Test
  void aMarkInOneBrowserShowsInTheOtherAndSoDoesItsTakingBack() throws Exception {
    try (RunningTrayward trayward = RunningTrayward.start(config);
        DarkBrowser one = browser("one");
        DarkBrowser other = browser("other")) {
      one.driver.get(trayward.page().toString());
      other.driver.get(trayward.page().toString());
      other.awaitText("state", "off");
      one.awaitText("state", "off");
      one.find("in").click();
      other.awaitText("print", "print 1");
      other.awaitTrue("document.querySelector('#emergence.next') !== null");
      // two presses within a second would be one mark
      trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 1.5);
      other.driver.switchTo().activeElement().sendKeys("b");
      one.awaitTrue("document.querySelector('#pull.next') !== null");
      one.pure("page-two-browsers");
      other.driver.switchTo().activeElement().sendKeys("u");
      one.awaitTrue("document.querySelector('#emergence.next') !== null");
      assertEquals(
          1, trayward.json("GET", "/api/prints", "").path(0).path("marks").size(), "one is left");
    }
  }

  /** From start to stop without a hand on the glass; the sheet by a foot switch alone. */
  @Test
  void aWholeSessionByKeysAlone() throws Exception {
    String quick =
        """
        [tray]
        start_c = 33
        liquid_l = 0.5
        [fan]
        spin_down_s = 1
        [control]
        set_c = 34
        [limits]
        purge_s = 10
        contact_test_s = 15
        proving_s = 2
        """;
    Path keys = Files.writeString(folder.resolve("keys.toml"), quick + Files.readString(config));
    try (RunningTrayward trayward = RunningTrayward.start(keys);
        DarkBrowser browser = browser("one")) {
      browser.driver.get(trayward.page().toString());
      browser.awaitText("state", "off");
      press(browser, "+");
      trayward.await(s -> s.path("set_c").asDouble() == 34.5);
      press(browser, "s");
      browser.awaitText("state", "holding", "heating");
      press(browser, "b");
      trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 1.5);
      press(browser, "b");
      trayward.await(s -> s.path("current_print").path("marks").size() == 2);
      trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 3.5);
      press(browser, "b");
      trayward.await(s -> s.path("current_print").isNull() && s.path("last_print").isObject());
      browser.pure("page-by-keys");
      press(browser, "x");
      browser.awaitText("state", "after-run");
      assertEquals(3, trayward.json("GET", "/api/prints", "").path(0).path("marks").size());
    }
  }

  private static void press(DarkBrowser browser, String key) {
    new Actions(browser.driver).sendKeys(key).perform();
  }

  @Test
  void thePageSaysThatTheHostIsGoneAndIsBackByItselfAfterARestart() throws Exception {
    try (DarkBrowser browser = browser("one")) {
      RunningTrayward trayward = RunningTrayward.start(config);
      browser.driver.get(trayward.page().toString());
      browser.awaitText("bath", "20.");
      browser.driver.executeScript(
          "window.lostAt = 0; new MutationObserver(() => {"
              + " if (document.body.classList.contains('lost') && !window.lostAt)"
              + " window.lostAt = Date.now(); })"
              + ".observe(document.body, { attributes: true });");
      long killedMs = System.currentTimeMillis();
      trayward.signal("KILL");
      browser.awaitText("connection", "connection lost");
      browser.awaitText("drift", "was 2");
      assertEquals("–", browser.find("bath").getText(), "an old temperature is never shown as now");
      browser.pure("page-host-gone");
      long lostMs = Math.round(browser.number("window.lostAt"));
      report("connection lost is said " + (lostMs - killedMs) + " ms after");
      trayward.close();
      try (RunningTrayward again = RunningTrayward.start(config)) {
        browser.awaitTrue("!document.body.classList.contains('lost')");
        browser.awaitText("bath", "20.");
        assertEquals("off", browser.find("state").getText(), again.page().toString());
        browser.pure("page-host-back");
      }
    }
  }

  /** On loopback, with the processor slowed to a quarter. */
  @Test
  void theFirstPaintNeedsLessThanAHundredKilobytesAndIsTimed() throws Exception {
    try (RunningTrayward trayward = RunningTrayward.start(config);
        DarkBrowser browser = browser("one")) {
      browser.driver.executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", 4));
      List<Double> paints = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        browser.driver.get(trayward.page().toString());
        browser.awaitTrue("performance.getEntriesByName('first-contentful-paint').length > 0");
        paints.add(
            browser.number("performance.getEntriesByName('first-contentful-paint')[0].startTime"));
      }
      browser.awaitText("state", "off");
      double bytes =
          browser.number(
              "performance.getEntriesByType('resource')"
                  + ".concat(performance.getEntriesByType('navigation'))"
                  + ".filter((one) => !one.name.includes('/api/'))"
                  + ".reduce((sum, one) => sum + one.decodedBodySize, 0)");
      Collections.sort(paints);
      report(
          String.format(
              Locale.ROOT,
              "first contentful paint at a quarter of the speed: median %.0f ms, %.0f bytes",
              paints.get(2),
              bytes));
      assertTrue(bytes < 100_000, bytes + " bytes");
    }
  }

  /** A page of the eight, in which browser it is. */
  private record Tab(DarkBrowser browser, String handle) {
    void front() {
      browser.driver.switchTo().window(handle);
    }
  }

  private static Tab tab(DarkBrowser browser, URI page) {
    browser.driver.switchTo().newWindow(WindowType.TAB);
    browser.driver.get(page.toString());
    browser.awaitText("state", "off");
    browser.driver.executeScript(
        "window.seen = {};"
            + "new MutationObserver(() => { const t = document.getElementById('set')"
            + ".firstElementChild.textContent; window.seen[t] = Date.now(); })"
            + ".observe(document.getElementById('set'),"
            + " { childList: true, characterData: true, subtree: true });");
    return new Tab(browser, browser.driver.getWindowHandle());
  }

  /**
   * From the answer to a change to the page that shows it, in eight pages at once. In two browsers,
   * since one keeps six connections to a host and each page holds one.
   */
  @Test
  void aChangeReachesEightPagesAndIsTimed() throws Exception {
    try (RunningTrayward trayward = RunningTrayward.start(config);
        DarkBrowser one = browser("one");
        DarkBrowser other = browser("other")) {
      List<Tab> tabs = new ArrayList<>();
      for (int i = 0; i < PAGES; i++) {
        tabs.add(tab(i % 2 == 0 ? one : other, trayward.page()));
      }
      List<Long> sentMs = new ArrayList<>();
      for (int i = 0; i < CHANGES; i++) {
        double wanted = Double.parseDouble(set(i));
        trayward.json("PUT", "/api/set-temperature", "{\"celsius\": " + set(i) + "}");
        sentMs.add(System.currentTimeMillis());
        trayward.await(s -> s.path("set_c").asDouble() == wanted);
      }
      List<Double> delays = new ArrayList<>();
      for (Tab tab : tabs) {
        tab.front();
        tab.browser().awaitTrue("window.seen['" + set(CHANGES - 1) + "'] > 0");
        for (int i = 0; i < CHANGES; i++) {
          double at = tab.browser().number("window.seen[arguments[0]] || 0", set(i));
          assertTrue(at > 0, "change " + i + " was never shown");
          delays.add(at - sentMs.get(i));
        }
      }
      Collections.sort(delays);
      report(
          String.format(
              Locale.ROOT,
              "change to screen in %d pages: median %.0f ms, p99 %.0f ms, most %.0f ms of %d",
              PAGES,
              delays.get(delays.size() / 2),
              delays.get((int) Math.floor(delays.size() * 0.99)),
              delays.get(delays.size() - 1),
              delays.size()));
    }
  }

  /** Each another temperature, and none of them twice. */
  private static String set(int i) {
    return String.format(Locale.ROOT, "%.1f", 30 + 0.1 * (i + 1));
  }
}
