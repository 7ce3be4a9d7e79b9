package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;

/** A browser on the dark page and one on the white pages, where there is one. One thread. */
final class SoakBrowsers implements AutoCloseable {

  private final RunningTrayward host;
  private final DarkBrowser dark;
  private final WhiteBrowser white;

  SoakBrowsers(RunningTrayward host, Path folder) throws Exception {
    this.host = host;
    this.dark = new DarkBrowser(Files.createDirectories(folder.resolve("dark-profile")));
    this.white = new WhiteBrowser(host, Files.createDirectories(folder.resolve("white-profile")));
  }

  void open() {
    dark.room(800, 480);
    dark.driver.get(host.page().resolve("/").toString());
    white.open("#/prints", "Prints");
  }

  /** Both pages have lived through it all: the dark one shows a temperature. */
  void stillThere() {
    assertTrue(dark.number("document.getElementById('page').textContent.length") > 20);
    assertTrue(white.find("main h1").getText().contains("Prints"));
  }

  @Override
  public void close() {
    dark.close();
    white.close();
  }
}
