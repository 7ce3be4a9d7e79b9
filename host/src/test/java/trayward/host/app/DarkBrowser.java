package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.imageio.ImageIO;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A real headless browser that looks at every pixel, and at where things lie. One test's own. */
final class DarkBrowser implements AutoCloseable {

  /** No green and no blue: paper fogs under both. */
  private static final int MOST_GREEN_OR_BLUE = 8;

  /** The test uses no developer tools, so which of them fits the browser does not matter. */
  private static final Logger TOOLS = Logger.getLogger("org.openqa.selenium.devtools");

  static {
    TOOLS.setLevel(Level.SEVERE);
  }

  final ChromeDriver driver;

  /** With a fresh profile in this folder. */
  DarkBrowser(Path profile) {
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
        "--ignore-certificate-errors", // a test's page signs its own
        "--user-data-dir=" + profile);
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(new java.io.File("/usr/bin/chromedriver"))
            .build();
    driver = new ChromeDriver(service, options);
  }

  /** The page's own room, CSS pixels, whatever the window around it takes. */
  void room(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  WebElement find(String id) {
    return driver.findElement(By.id(id));
  }

  void awaitText(String id, String... any) {
    new WebDriverWait(driver, Duration.ofMinutes(2))
        .until(
            d -> {
              String text = d.findElement(By.id(id)).getText().toLowerCase(Locale.ROOT);
              return Arrays.stream(any).anyMatch(text::contains);
            });
  }

  /** Waits until a script's expression is true. */
  void awaitTrue(String script) {
    new WebDriverWait(driver, Duration.ofMinutes(2))
        .until(d -> Boolean.TRUE.equals(driver.executeScript("return " + script)));
  }

  /** The number that a script's expression is. */
  double number(String script, Object... arguments) {
    return Double.parseDouble(String.valueOf(driver.executeScript("return " + script, arguments)));
  }

  /** Takes a picture into the build folder and looks at every pixel. */
  void pure(String name) throws Exception {
    byte[] png = driver.getScreenshotAs(OutputType.BYTES);
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

  /** What breaks the rules of WCAG 2.1 A and AA, in words; empty where nothing does. */
  String inaccessible() throws IOException {
    try (InputStream in = DarkBrowser.class.getResourceAsStream("/axe.min.js")) {
      driver.executeScript(
          new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8));
    }
    return String.valueOf(
        driver.executeAsyncScript(
            "const done = arguments[arguments.length - 1];"
                + "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa']})"
                + ".then(r => done((r.passes.length > 5 ? '' : 'not looked at ')"
                + " + r.violations.map(v => v.id + ' ' + v.nodes.map(n =>"
                + " n.target + ' ' + n.failureSummary).join('; '))), e => done(String(e)))"));
  }

  /** Nothing lies over another, is cut off, or covers the stop; a finger finds every button. */
  void wellLaid(String name) {
    assertEquals("", badlyLaid(), name);
  }

  /** What of that is not so, in words; empty where all is well. */
  @SuppressWarnings("unchecked")
  String badlyLaid() {
    return String.join("; ", (List<String>) driver.executeScript(LAYOUT));
  }

  @Override
  public void close() {
    driver.quit();
  }

  /**
   * What is wrong with where things lie, as a list of words. Text is measured by its own lines, not
   * by the box it stands in. A seven inch panel shows 800 pixels on 154 mm: 20 mm are 104 of them.
   */
  private static final String LAYOUT =
      """
      const wrong = [];
      const shown = (e) => e.checkVisibility({ opacityProperty: true, visibilityProperty: true })
        && !e.closest('.unseen') && e.getBoundingClientRect().width > 1;
      const box = (e) => e.getBoundingClientRect();
      const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2
        && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2;
      const info = document.getElementById('info');
      const lying = getComputedStyle(document.getElementById('page')).display === 'grid';
      const told = (e) => (e.id ? '#' + e.id : e.className || e.tagName) + ' "' + e.textContent.trim().slice(0, 20) + '"';
      if (document.documentElement.scrollWidth > innerWidth + 1) wrong.push('page wider than the screen');
      if (lying && info.scrollHeight > info.clientHeight + 1) wrong.push('info too long by ' + (info.scrollHeight - info.clientHeight));
      if (lying && document.documentElement.scrollHeight > innerHeight + 1) wrong.push('page too long');
      const buttons = [...document.querySelectorAll('button')].filter(shown);
      for (const b of buttons) {
        const r = box(b);
        if (r.width < 103.5 || r.height < 103.5) wrong.push(told(b) + ' is ' + r.width + ' by ' + r.height);
        if (r.left < -1 || r.right > innerWidth + 1) wrong.push(told(b) + ' leaves the screen');
        for (const c of buttons) if (b !== c && c.id !== 'stop' && b.id !== 'stop' && over(r, box(c))) wrong.push(told(b) + ' over ' + told(c));
      }
      const texts = [];
      const walk = document.createTreeWalker(document.getElementById('page'), NodeFilter.SHOW_TEXT);
      while (walk.nextNode()) {
        const e = walk.currentNode.parentElement;
        if (!walk.currentNode.data.trim() || !shown(e) || e.closest('#message')) continue;
        const range = document.createRange();
        range.selectNodeContents(walk.currentNode);
        for (const r of range.getClientRects()) if (r.width > 1) texts.push({ e, r });
      }
      for (const { e, r } of texts) {
        const b = e.closest('button');
        if (b && (r.left < box(b).left || r.right > box(b).right + 1 || r.bottom > box(b).bottom + 1)) wrong.push(told(e) + ' leaves its button');
        const cut = e.closest('#watch-small'); // its end may be cut, after what counts
        if (!cut && (r.left < -1 || r.right > innerWidth + 1)) wrong.push(told(e) + ' leaves the screen');
        if (lying && !b && info.contains(e) && (r.bottom > box(info).bottom + 3 || (!cut && r.right > box(info).right + 1))) wrong.push(told(e) + ' leaves the info');
      }
      // lines of different elements; the ink of a line is lower than its box
      const ink = (r) => ({ left: r.left, right: r.right, top: r.top + r.height * 0.2, bottom: r.bottom - r.height * 0.2 });
      for (let i = 0; i < texts.length; i++) {
        for (let j = i + 1; j < texts.length; j++) {
          const a = texts[i];
          const b = texts[j];
          if (a.e === b.e || a.e.closest('#stop') || b.e.closest('#stop')) continue;
          if (a.e.closest('#watch-small') || b.e.closest('#watch-small')) continue;
          if (over(ink(a.r), ink(b.r))) wrong.push(told(a.e) + ' over ' + told(b.e));
        }
      }
      const stop = box(document.getElementById('stop'));
      for (let x = 0.1; x < 1; x += 0.2) {
        for (let y = 0.1; y < 1; y += 0.2) {
          const at = document.elementFromPoint(stop.left + x * stop.width, stop.top + y * stop.height);
          if (!at || !at.closest('#stop')) wrong.push('the stop is covered by ' + (at && told(at)));
        }
      }
      const drawn = [...document.querySelectorAll('#watch-bar, #sheet, #trace svg')].filter(shown);
      for (const e of drawn) if (lying && (box(e).bottom > box(info).bottom + 1 || box(e).height < 15)) wrong.push(told(e) + ' cut off');
      return wrong;
      """;
}
