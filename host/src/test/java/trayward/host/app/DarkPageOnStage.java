package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static trayward.host.app.StagedStatus.HOLDING;
import static trayward.host.app.StagedStatus.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A browser before a staged page, for each test anew. */
abstract class DarkPageOnStage {

  /** A seven inch panel, a phone held upright, a laptop. */
  private static final int[][] ROOMS = {{800, 480}, {390, 844}, {1366, 768}};

  @TempDir private Path folder;
  StagedPage stage;
  DarkBrowser browser;

  @BeforeEach
  void open() throws Exception {
    stage = new StagedPage();
    stage.say(json(HOLDING).toString());
    browser = new DarkBrowser(folder.resolve("profile"));
    browser.room(800, 480);
    browser.driver.get(stage.page().toString());
    browser.awaitText("state", "holding");
  }

  @AfterEach
  void close() {
    browser.close();
    stage.close();
  }

  void looksRight(String name) throws Exception {
    assertEquals("", wrongOf(name));
  }

  String wrongOf(String name) throws Exception {
    StringBuilder wrong = new StringBuilder();
    for (int[] room : ROOMS) {
      browser.room(room[0], room[1]);
      browser.awaitTrue("innerWidth === " + room[0]);
      String sized = name + "-" + room[0];
      browser.pure(sized);
      String badly = browser.badlyLaid();
      wrong.append(badly.isEmpty() ? "" : sized + ": " + badly + "\n");
    }
    return wrong.toString();
  }

  void shows(ObjectNode status, String mark) throws Exception {
    status.put("fan_rpm", mark.hashCode() % 1000 + 2000);
    stage.say(status.toString());
    browser.awaitText("fan-small", status.path("fan_rpm").asText());
  }
}
