package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A real headless browser on the white-light pages, for tests. */
final class WhiteBrowser implements AutoCloseable {

  /** No developer tools are used, so which of them fits the browser does not matter. */
  private static final Logger TOOLS = Logger.getLogger("org.openqa.selenium.devtools");

  static {
    TOOLS.setLevel(Level.SEVERE);
  }

  private final ChromeDriver driver;
  private final URI base;

  WhiteBrowser(RunningTrayward trayward, Path profile) {
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
            .usingDriverExecutable(new File("/usr/bin/chromedriver"))
            .build();
    driver = new ChromeDriver(service, options);
    base = trayward.page().resolve("/white.html");
    size(1280, 800);
  }

  /** The size of what is seen, whatever a window has around it. */
  void size(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  /** Opens a page, such as {@code #/prints}, and waits for this in its title. */
  void open(String page, String title) {
    driver.get("about:blank");
    driver.get(base + page);
    title(title);
  }

  void title(String part) {
    until(() -> driver.findElement(By.cssSelector("main h1")).getText().contains(part), part);
  }

  WebElement find(String css) {
    return driver.findElement(By.cssSelector(css));
  }

  List<WebElement> all(String css) {
    return driver.findElements(By.cssSelector(css));
  }

  /** Waits until something says this. */
  void says(String css, String text) {
    until(() -> all(css).stream().anyMatch(e -> e.getText().contains(text)), css + ": " + text);
  }

  void until(java.util.function.BooleanSupplier so, String what) {
    new WebDriverWait(driver, Duration.ofMinutes(1))
        .ignoring(StaleElementReferenceException.class)
        .ignoring(org.openqa.selenium.NoSuchElementException.class)
        .withMessage(what)
        .until(d -> so.getAsBoolean());
  }

  /** The part of a page under this heading. */
  String part(String label) {
    return "section[aria-label='" + label + "'] ";
  }

  /** Writes into a field over what stood there. */
  void fill(String css, String text) {
    WebElement field = find(css);
    field.clear();
    field.sendKeys(text);
  }

  void choose(String css, String value) {
    new Select(find(css)).selectByValue(value);
  }

  /** Presses, brought into the middle first, out from under the bar. */
  void press(String css) {
    WebElement element = find(css);
    driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", element);
    element.click();
  }

  /** What a script in the page says, as text. */
  String script(String text) {
    return String.valueOf(driver.executeScript(text));
  }

  /** A picture into the build folder. */
  void picture(String name) throws IOException {
    Path pictures = Files.createDirectories(Path.of("target", "pictures"));
    script("window.scrollTo(0, 0)");
    Files.write(pictures.resolve(name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
  }

  /** Nothing is wider than what is seen, and the stop is within it, at the page's end too. */
  void fits(String what) {
    script("window.scrollTo(0, document.documentElement.scrollHeight)");
    String over =
        script(
            "return document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assertEquals("0", over, what + " scrolls sideways");
    String reach =
        script(
            "const r = document.getElementById('stop').getBoundingClientRect();"
                + "const e = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);"
                + "return e !== null && e.id === 'stop' && r.width >= 44 && r.height >= 44");
    assertEquals("true", reach, what + ": the stop is out of reach");
  }

  /** What the rules of WCAG 2.1, levels A and AA, say against a page. */
  void accessible(String what) throws IOException {
    try (InputStream in = WhiteBrowser.class.getResourceAsStream("/axe.min.js")) {
      assertTrue(in != null, "the rules are on the test's path");
      script(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    }
    String found =
        String.valueOf(
            driver.executeAsyncScript(
                "const done = arguments[arguments.length - 1];"
                    + "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa']})"
                    + ".then(r => done((r.passes.length > 5 ? '' : 'not looked at ')"
                    + " + r.violations.map(v => v.id + ' ' + v.nodes.map(n =>"
                    + " n.target + ' ' + n.failureSummary).join('; '))), e => done(String(e)))"));
    assertEquals("", found, what);
  }

  @Override
  public void close() {
    driver.quit();
  }
}
