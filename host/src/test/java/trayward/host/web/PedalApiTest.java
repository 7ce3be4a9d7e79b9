package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.link.AlarmView;
import trayward.host.link.Command;

/** What wet hands and feet do besides the commands: marks, a foot switch, silence for an alarm. */
@Timeout(60)
class PedalApiTest {

  @TempDir private Path folder;
  private LocalPage page;

  @BeforeEach
  void start() throws Exception {
    page = new LocalPage(folder);
  }

  @AfterEach
  void stop() {
    page.close();
  }

  @Test
  void aKeyboardsFootSwitchMakesTheNextMarkAndTakesItsOwnBack() throws Exception {
    String pressed = "{\"press\":\"short\"}";
    page.logbook.nowS = 10;
    assertEquals("in", page.ok(200, "POST", "/api/pedal", pressed).path("marked").asText());
    page.logbook.nowS = 10.6;
    JsonNode again = page.ok(200, "POST", "/api/pedal", pressed);
    assertEquals("in", again.path("marked").asText(), "two within a second are one");
    assertEquals(1, again.path("print").path("marks").size());
    page.logbook.nowS = 60;
    assertEquals("emergence", page.ok(200, "POST", "/api/pedal", pressed).path("marked").asText());
    JsonNode kept = page.ok(200, "POST", "/api/pedal", "{\"press\":\"long\"}");
    assertEquals("emergence", kept.path("undone").asText());
    assertEquals(
        "press",
        page.problem(400, "POST", "/api/pedal", "{\"press\":\"hop\"}").path("field").asText());
    assertTrue(page.tray.asked.stream().allMatch(Command.PRESENCE::equals), "a foot is presence");
  }

  @Test
  void aMarkSaysWhereItCameFrom() throws Exception {
    JsonNode print = page.ok(201, "POST", "/api/marks", "{\"kind\":\"in\",\"by\":\"page\"}");
    assertEquals("page", print.path("marks").path(0).path("by").asText());
    page.problem(400, "POST", "/api/marks", "{\"kind\":\"pull\",\"by\":\"magic\"}");
    page.logbook.nowS = 9;
    JsonNode pulled = page.ok(201, "POST", "/api/marks", "{\"kind\":\"pull\"}");
    assertEquals("api", pulled.path("marks").path(1).path("by").asText());
  }

  @Test
  void oneAlarmIsSilencedAndOneThatDoesNotSoundIsRefused() throws Exception {
    page.tray.alarms =
        List.of(
            new AlarmView("AIR_LOST", "UNACKNOWLEDGED", true, "CRITICAL", "", "SR-05", "", "", ""));
    JsonNode done = page.ok(200, "POST", "/api/alarms/AIR_LOST/silence", "");
    assertEquals("AIR_LOST", done.path("silenced").asText());
    page.problem(409, "POST", "/api/alarms/TRAY_DRY/silence", "");
    assertEquals(List.of(), page.tray.asked, "silencing is not acknowledging");
  }
}
