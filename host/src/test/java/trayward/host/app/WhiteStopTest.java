package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The stop and the bar of the white-light pages, with the program there and with it gone. */
@Tag("full")
class WhiteStopTest {

  @TempDir private Path folder;

  /** SR-14: delivered or not, what came of a stop is shown. */
  @Test
  @Timeout(180)
  void aStopIsSaidToBeDeliveredOnlyWhereItWasAndALostTrayIsNotHeard() throws Exception {
    try (RunningTrayward trayward = WhiteScenes.trayward(folder)) {
      WhiteScenes.told(trayward, "POST", "/api/commands/start", "");
      trayward.await(s -> !s.path("state").asText().equals("OFF"));
      try (WhiteBrowser browser = new WhiteBrowser(trayward, folder.resolve("profile"))) {
        browser.open("#/care", "Maintenance");
        browser.says("#bath", "°C");
        browser.press("#stop");
        browser.says("#stop-said", "Stop delivered");
        trayward.awaitState("OFF");
        browser.says("#state", "off");
        trayward.signal("KILL");
        browser.says("#bath", "not heard");
        browser.says("#fan", "not heard");
        browser.press("#stop");
        browser.says("#stop-said", "STOP NOT DELIVERED: press the stop at the tray");
        assertTrue(browser.find("#stop").isEnabled(), "it can be pressed again");
        browser.picture("white-stop-lost");
      }
    }
  }

  @Test
  @Timeout(180)
  void aMaintenanceDoneAndAPlanAskedAreAnsweredAndASheetInTheDeveloperIsWarnedOf()
      throws Exception {
    try (RunningTrayward trayward = WhiteScenes.trayward(folder);
        WhiteBrowser browser = new WhiteBrowser(trayward, folder.resolve("profile"))) {
      browser.open("#/care", "Maintenance");
      browser.press(".rows li:first-child button");
      browser.says("#said", "done today");
      WhiteScenes.told(trayward, "POST", "/api/marks", "{'kind': 'in'}");
      browser.says("#paper-out", "Print 1 is in the developer");
      browser.open("#/plans/bath", "Plan: bath");
      browser.press(".plan button");
      browser.says(".plan .error", "parts joined by +");
      browser.fill("[name='dilution']", "1+7");
      browser.fill("[name='litres']", "1");
      browser.press(".plan button");
      browser.says(".answer", "875");
      browser.says(".answer h2", "estimated");
    }
  }
}
