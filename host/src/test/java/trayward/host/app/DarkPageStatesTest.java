package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.app.StagedStatus.ALARM;
import static trayward.host.app.StagedStatus.BEFORE;
import static trayward.host.app.StagedStatus.HOLDING;
import static trayward.host.app.StagedStatus.PULL;
import static trayward.host.app.StagedStatus.REFUSED;
import static trayward.host.app.StagedStatus.inDeveloper;
import static trayward.host.app.StagedStatus.json;
import static trayward.host.app.StagedStatus.ofPrint;
import static trayward.host.app.StagedStatus.with;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What the dark page shows of states that come after many prints: every pixel, and its layout. */
@Timeout(300)
class DarkPageStatesTest extends DarkPageOnStage {

  @Test
  void everyStateIsPureRedAndWellLaidOnThreeScreens() throws Exception {
    Map<String, ObjectNode> states = new LinkedHashMap<>();
    states.put("page-outlook", with(json(HOLDING), "forecast", BEFORE));
    states.put("page-outlook-refused", with(json(HOLDING), "forecast", REFUSED));
    states.put("page-window-waiting", inDeveloper(95, ofPrint(BEFORE)));
    states.put("page-window-open", inDeveloper(200, ofPrint(BEFORE).replace("false", "true")));
    states.put("page-window-pull", inDeveloper(230, PULL));
    states.put("page-window-pull-open", inDeveloper(310, PULL.replace("false", "true")));
    states.put(
        "page-window-long",
        inDeveloper(
            755,
            PULL.replace("290,340", "790,905")
                .replace("270,371", "760,999")
                .replace("4:50", "13:10")));
    states.put("page-window-refused", inDeveloper(95, REFUSED));
    states.put(
        "page-window-noted",
        with(with(inDeveloper(95, ofPrint(BEFORE)), "presence_due_s", "200"), "log_ok", "false"));
    states.put(
        "page-window-alarm",
        with(
            with(inDeveloper(200, ofPrint(BEFORE).replace("false", "true")), "alarms", ALARM),
            "first_out",
            "null"));
    states.put(
        "page-outlook-crowded",
        with(
            with(with(json(HOLDING), "forecast", BEFORE), "presence_due_s", "200"),
            "log_ok",
            "false"));
    states.put(
        "page-window-level",
        with(with(inDeveloper(95, ofPrint(BEFORE)), "level", "'LOW'"), "add_l", "0.15"));
    states.put(
        "page-at-rest",
        with(
            with(with(json(HOLDING), "state", "'OFF'"), "state_words", "'off'"),
            "last_print",
            "{'id':3,'elapsed_s':245,'marks':[{'kind':'in','elapsed_s':0},"
                + "{'kind':'pull','elapsed_s':245}]}"));
    states.put(
        "page-rest-outlook", with(states.get("page-at-rest").deepCopy(), "forecast", BEFORE));
    StringBuilder wrong = new StringBuilder();
    for (var each : states.entrySet()) {
      shows(each.getValue(), each.getKey());
      wrong.append(wrongOf(each.getKey()));
    }
    assertEquals("", wrong.toString());
  }

  @Test
  void beforeInOneLineSaysTheWindowAndHowManyPrintsStandBehindIt() throws Exception {
    shows(with(json(HOLDING), "forecast", BEFORE), "before");
    browser.awaitText("outlook", "emergence 3:10 to 4:05, from 12 prints");
    shows(with(json(HOLDING), "forecast", REFUSED), "refused");
    browser.awaitText("outlook", "no forecast: no valid bath reading for too long");
    assertFalse(browser.find("watch").isDisplayed(), "no bar without a window");
  }

  @Test
  void theBarStandsWhereTheWindowIsAndOpensOnce() throws Exception {
    shows(inDeveloper(95, ofPrint(BEFORE)), "waiting");
    browser.awaitText("watch-words", "start watching from 3:10");
    browser.awaitText("watch-small", "from 12 prints");
    // 300 s: 268 s and a twentieth, to the next half minute
    assertEquals(190.4 / 300, share("watch-80", "left"), 0.01);
    assertEquals((268 - 170.1) / 300, share("watch-95", "width"), 0.01);
    assertEquals(95.0 / 300, share("watch-gone", "width"), 0.02);
    assertEquals("", browser.find("watch-said").getDomProperty("textContent"));
    browser.driver.executeScript(
        "window.said = 0; new MutationObserver((all) => { window.said += all.length; })"
            + ".observe(document.getElementById('watch-said'), { childList: true });");
    shows(inDeveloper(200, ofPrint(BEFORE).replace("false", "true")), "open");
    browser.awaitText("watch-words", "watch now");
    shows(inDeveloper(202, ofPrint(BEFORE).replace("false", "true")), "later");
    assertEquals(1L, browser.driver.executeScript("return window.said"), "announced once");
    shows(inDeveloper(230, PULL), "pull");
    browser.awaitText("watch-words", "start watching from 4:50");
    browser.awaitText("watch-what", "pull");
  }

  private double share(String id, String side) {
    return ((Number)
            browser.driver.executeScript(
                "const bar = document.getElementById('watch-bar');"
                    + "const inside = bar.getBoundingClientRect();"
                    + "const r = document.getElementById(arguments[0]).getBoundingClientRect();"
                    + "return (arguments[1] === 'left' ? r.left - inside.left - bar.clientLeft"
                    + " : r.width) / bar.clientWidth;",
                id,
                side))
        .doubleValue();
  }

  @Test
  void anAlarmComesFirstAndTheWatchIsSaidBesideIt() throws Exception {
    ObjectNode open = inDeveloper(200, ofPrint(BEFORE).replace("false", "true"));
    shows(with(open, "alarms", ALARM), "alarm");
    browser.awaitText("first-out", "presence due");
    browser.awaitText("print-watch", "watch now");
    assertFalse(browser.find("watch").isDisplayed(), "the alarm has the room");
  }

  @Test
  void whatIsNoLongerHeardIsNotShownAsNow() throws Exception {
    shows(inDeveloper(95, ofPrint(BEFORE)), "waiting");
    browser.awaitText("watch-words", "start watching from 3:10");
    stage.fallSilent();
    browser.awaitText("connection", "connection lost");
    assertFalse(browser.find("watch").isDisplayed());
    assertTrue(browser.find("outlook").getText().contains("last heard: watch from 3:10"));
    looksRight("page-window-lost");
  }

  @Test
  void thePrintThatIsRepeatedIsDrawnUnderTheSheet() throws Exception {
    StringBuilder trace = new StringBuilder("t_s,bath_c,plate_c,set_c,duty,state,fan_proven\n");
    for (int t = 0; t < 260; t++) {
      trace.append(t).append(',').append(38 + Math.sin(t / 40.0)).append(",,38,0,HOLDING,1\n");
    }
    stage.answer("GET /api/prints/7/trace.csv", trace.toString());
    stage.answer("GET /api/prints/3/trace.csv", trace.substring(0, trace.indexOf("\n90,") + 1));
    stage.answer(
        "GET /api/prints/7",
        json("{'marks':[{'kind':'emergence','elapsed_s':200},{'kind':'pull','elapsed_s':260}]}")
            .toString());
    shows(with(inDeveloper(95, ofPrint(BEFORE)), "guide", "{'print':7}"), "guide");
    browser.awaitText("watch-small", "as print 7, emergence 3:20, pull 4:20");
    browser.awaitTrue("document.getElementById('sheet-ticks').getAttribute('d').includes('M')");
    browser.awaitTrue("document.getElementById('sheet-old').getAttribute('d').includes('L')");
    looksRight("page-guide");
    shows(with(inDeveloper(97, REFUSED), "guide", "{'print':7}"), "without");
    assertTrue(browser.find("sheet").isDisplayed(), "drawn without a window too");
    looksRight("page-guide-alone");
    assertEquals(
        1,
        stage.asked().stream().filter(a -> a.equals("GET /api/prints/7/trace.csv")).count(),
        "asked for once");
  }
}
