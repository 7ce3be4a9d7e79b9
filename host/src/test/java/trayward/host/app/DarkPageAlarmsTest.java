package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.app.StagedStatus.BEFORE;
import static trayward.host.app.StagedStatus.HOLDING;
import static trayward.host.app.StagedStatus.inDeveloper;
import static trayward.host.app.StagedStatus.json;
import static trayward.host.app.StagedStatus.ofPrint;
import static trayward.host.app.StagedStatus.with;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.TripCause;
import trayward.controller.event.Warning;

/** Every alarm of the controller's own table on the dark page, and what answers it. */
@Timeout(600)
class DarkPageAlarmsTest extends DarkPageOnStage {

  private static void add(ArrayNode alarms, AlarmCause cause, String state) {
    alarms
        .addObject()
        .put("cause", cause.name())
        .put("state", state)
        .put("latched", cause instanceof TripCause)
        .put("priority_words", cause.priority().words())
        .put("requirement", cause.requirement())
        .put("meaning", cause.meaning())
        .put("why", cause.why())
        .put("action", cause.action());
  }

  private static ObjectNode alarmed(ObjectNode status, String state, AlarmCause... causes) {
    ArrayNode alarms = status.putArray("alarms");
    for (AlarmCause cause : causes) {
      add(alarms, cause, state);
    }
    if (causes[0] instanceof TripCause) {
      status.put("first_out", causes[0].name()).put("state", "LOCKOUT");
      status.put("state_words", "lockout").put("heater_on", false);
    }
    return status;
  }

  private static ObjectNode sheetIn() throws Exception {
    return inDeveloper(200, ofPrint(BEFORE).replace("false", "true"));
  }

  private boolean is(String id) {
    return browser.find(id).isDisplayed();
  }

  @Test
  @Tag("full")
  void everyAlarmIsPureRedAndWellLaidOnThreeScreensWithAndWithoutASheet() throws Exception {
    StringBuilder wrong = new StringBuilder();
    for (AlarmCause cause : AlarmCause.all()) {
      String name = cause.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
      shows(alarmed(json(HOLDING), "UNACKNOWLEDGED", cause), name);
      browser.awaitText(
          "first-out", cause.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
      assertEquals(cause.action(), browser.find("alarm-action").getText());
      wrong.append(wrongOf("alarm-" + name));
      shows(alarmed(sheetIn(), "UNACKNOWLEDGED", cause), name + "-in");
      wrong.append(wrongOf("alarm-in-" + name));
    }
    assertEquals("", wrong.toString());
  }

  @Test
  void anAlarmHasTheWholeScreenButForStopAndWhatAnswersIt() throws Exception {
    StringBuilder wrong = new StringBuilder();
    shows(
        alarmed(sheetIn(), "UNACKNOWLEDGED", TripCause.HEAT_NOT_ARRIVING, Warning.HOST_LOST),
        "two");
    browser.awaitText("alarm-more", "also host lost");
    wrong.append(wrongOf("alarm-two"));
    assertTrue(is("stop") && is("acknowledge") && is("silence") && is("reset") && is("pull"));
    assertTrue(is("bath") && is("elapsed") && is("print-watch"));
    assertFalse(is("start") || is("raise-set") || is("trace") || is("watch") || is("cautions"));
    shows(alarmed(json(HOLDING), "UNACKNOWLEDGED", TripCause.AIR_LOST), "alone");
    browser.awaitTrue("getComputedStyle(document.getElementById('marks')).display === 'none'");
    browser.driver.executeScript(
        "const r = document.getElementById('alarm').getBoundingClientRect();"
            + "window.share = r.width * r.height / innerWidth / innerHeight");
    double share = browser.number("window.share");
    assertTrue(share >= 0.45, "of the screen: " + share);
    shows(alarmed(json(HOLDING), "LATCHED_ACKNOWLEDGED", TripCause.AIR_LOST), "seen");
    browser.awaitTrue("document.querySelector('#reset.act') !== null");
    wrong.append(wrongOf("alarm-seen"));
    assertFalse(is("silence"), "it is quiet already");
    shows(alarmed(json(HOLDING), "ACKNOWLEDGED", Warning.LEVEL_LOW), "warning seen");
    browser.awaitTrue("!document.body.classList.contains('whole')");
    wrong.append(wrongOf("alarm-warning-seen"));
    ObjectNode low = with(with(sheetIn(), "level", "'LOW'"), "add_l", "0.15");
    shows(alarmed(low.deepCopy(), "UNACKNOWLEDGED", Warning.LEVEL_LOW), "level low");
    browser.awaitText("alarm-more", "add about 0.15 l of water");
    wrong.append(wrongOf("alarm-level-low"));
    shows(alarmed(low, "ACKNOWLEDGED", Warning.LEVEL_LOW), "level low seen");
    browser.awaitTrue("document.getElementById('alarm').hidden");
    wrong.append(wrongOf("alarm-level-low-seen"));
    shows(alarmed(json(HOLDING), "ACKNOWLEDGED", Warning.HOST_LOST), "another seen");
    browser.awaitTrue("!document.getElementById('alarm').hidden");
    assertTrue(is("alarm") && is("start") && is("heat"), "an alarm that was seen makes room");
    assertEquals("", wrong.toString());
  }

  /** WCAG 2.2, 2.3.1 three flashes, and 2.3.3 motion that a person has asked to be spared. */
  @Test
  @Tag("full")
  void itFlashesOnceInTwoSecondsAndNotWhereMotionIsReduced() throws Exception {
    shows(alarmed(json(HOLDING), "UNACKNOWLEDGED", TripCause.AIR_LOST), "calls");
    String running =
        "document.getElementById('alarm').getAnimations().map(a => a.effect.getTiming().duration)";
    browser.awaitTrue(running + ".length === 1");
    assertEquals(List.of(2000L), browser.driver.executeScript("return " + running));
    media("reduce");
    browser.awaitTrue(running + ".length === 0");
    browser.pure("alarm-still");
    media("no-preference");
    browser.awaitTrue(running + ".length === 1");
    shows(alarmed(json(HOLDING), "ACKNOWLEDGED", TripCause.AIR_LOST), "seen");
    browser.awaitTrue(running + ".length === 0");
  }

  private void media(String motion) {
    browser.driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-reduced-motion", "value", motion))));
  }

  /** Contrast of 4.5 to 1, names, roles and live regions, by the rules of WCAG 2.1 A and AA. */
  @Test
  @Tag("full")
  void thePageIsAccessibleAtRestInPrintInAlarmAndUnheard() throws Exception {
    StringBuilder wrong = new StringBuilder();
    for (ObjectNode status :
        List.of(
            json(HOLDING),
            sheetIn(),
            alarmed(sheetIn(), "UNACKNOWLEDGED", TripCause.AIR_LOST),
            alarmed(json(HOLDING), "LATCHED_ACKNOWLEDGED", TripCause.RELAY_STUCK),
            with(with(json(HOLDING), "level", "'LOW'"), "add_l", "0.15"))) {
      shows(status, status.toString());
      wrong.append(browser.inaccessible());
    }
    stage.fallSilent();
    browser.awaitText("connection", "connection lost");
    wrong.append(browser.inaccessible());
    assertEquals("", wrong.toString());
  }

  @Test
  @Tag("full")
  void aPointerOverAButtonAndTheFocusOnItAreRedToo() throws Exception {
    for (String id : List.of("in", "raise-set", "start", "stop")) {
      new Actions(browser.driver).moveToElement(browser.find(id)).perform();
      browser.pure("page-over-" + id);
    }
    for (int i = 0; i < 8; i++) {
      new Actions(browser.driver).sendKeys(Keys.TAB).perform();
      browser.pure("page-focus-" + i);
    }
    browser.awaitTrue("document.activeElement.tagName === 'BUTTON'");
  }

  @Test
  @Tag("full")
  void silenceIsAskedForTheAlarmThatIsShownAndForNoOther() throws Exception {
    shows(
        alarmed(json(HOLDING), "UNACKNOWLEDGED", TripCause.AIR_LOST, TripCause.BATH_TOO_HOT),
        "two");
    browser.awaitText("first-out", "air lost");
    browser.find("silence").click();
    browser.awaitText("message", "air lost silenced for two minutes");
    List<String> asked = stage.asked().stream().filter(a -> a.contains("silence")).toList();
    assertEquals(List.of("POST /api/alarms/AIR_LOST/silence"), asked);
    assertTrue(stage.asked().stream().noneMatch(a -> a.contains("acknowledge")));
  }

  @Test
  void aKeyOfAFootSwitchMarksOnceHoweverItRepeatsAndKeptDownTakesItsMarkBack() throws Exception {
    stage.answer("POST /api/pedal", "{\"marked\":\"in\",\"undone\":\"in\"}");
    new Actions(browser.driver).sendKeys("b").perform();
    browser.awaitText("message", "in marked");
    browser.driver.executeScript(
        "localStorage.setItem('trayward-pedal', 'F9');"
            + "for (let i = 0; i < 20; i++) document.dispatchEvent("
            + "new KeyboardEvent('keydown', { key: 'F9', repeat: i > 0, bubbles: true }));");
    browser.awaitText("message", "in taken back");
    assertEquals(
        List.of(
            "POST /api/pedal {\"press\":\"short\"}",
            "POST /api/pedal {\"press\":\"short\"}",
            "POST /api/pedal {\"press\":\"long\"}"),
        stage.asked().stream().filter(a -> a.contains("/api/pedal")).toList());
  }
}
