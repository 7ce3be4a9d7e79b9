package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Objects;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Cookie;
import trayward.host.web.guard.PasswordFile;
import trayward.host.web.guard.PasswordHash;

/** The login in a real headless browser, over TLS, against the real program. */
@Tag("full")
class LoginPageTest {

  @TempDir private Path folder;

  private RunningTrayward trayward() throws Exception {
    Path data = folder.resolve("data");
    new PasswordFile(data)
        .write(PasswordHash.of("correct horse".toCharArray(), new SecureRandom()));
    Path store = Keystores.made(folder, "of the store");
    Path word = Files.writeString(folder.resolve("word.txt"), "of the store\n");
    Path config =
        Files.writeString(
            folder.resolve("login.toml"),
            "[server]\nport = 0\nkeystore = '%s'\nkeystore_password_file = '%s'\n[log]\nfolder = '%s'\n"
                .formatted(store, word, data));
    return RunningTrayward.start(config);
  }

  @Test
  @Timeout(180)
  void aPersonLogsInStopsAndIsAskedAgainWhenTheSessionIsOver() throws Exception {
    try (RunningTrayward trayward = trayward();
        DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
      browser.room(800, 480);
      browser.driver.get(trayward.page().toString());
      browser.awaitTrue("location.pathname === '/login.html'");
      browser.pure("login");
      browser.find("stop").click();
      browser.awaitText("stop-said", "delivered");
      browser.find("password").sendKeys("battery staple");
      browser.find("enter").click();
      browser.awaitText("said", "not the password");
      browser.pure("login-wrong");
      browser.find("password").sendKeys("correct horse");
      browser.find("enter").click();
      browser.awaitText("state", "off");
      browser.pure("login-done");
      Cookie cookie =
          Objects.requireNonNull(browser.driver.manage().getCookieNamed("trayward_session"));
      assertTrue(cookie.isHttpOnly() && cookie.isSecure());
      assertEquals("Strict", cookie.getSameSite());
      assertEquals("", browser.driver.executeScript("return document.cookie"));
      browser.driver.manage().deleteAllCookies(); // as a session that is over
      browser.driver.navigate().refresh();
      browser.awaitTrue("location.pathname === '/login.html'");
      browser.room(360, 640);
      browser.pure("login-phone");
      browser.driver.get(trayward.page().resolve("/white.html").toString());
      browser.awaitTrue("location.pathname === '/login.html'");
    }
  }

  @Test
  @Timeout(180)
  void thePageThatIsOpenShowsTheLoginWhereItHearsNothingForWantOfOne() throws Exception {
    try (RunningTrayward trayward = trayward();
        DarkBrowser browser = new DarkBrowser(folder.resolve("profile"))) {
      browser.driver.get(trayward.page().toString());
      browser.awaitTrue("location.pathname === '/login.html'");
      browser.find("password").sendKeys("correct horse");
      browser.find("enter").click();
      browser.awaitText("state", "off");
      browser.driver.executeScript("fetch('/api/logout', { method: 'POST' })");
      browser.awaitTrue("location.pathname === '/login.html'");
    }
  }
}
