package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** What the dark page shows of states that come after many prints: every pixel, and its layout. */
@Timeout(300)
class DarkPageStatesTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** A seven inch panel, a phone held upright, a laptop. */
  private static final int[][] ROOMS = {{800, 480}, {390, 844}, {1366, 768}};

  private static final String HOLDING =
      """
      {'state':'HOLDING','state_words':'holding','bath_c':38.5,'bath_uncertainty_k':0.5,'set_c':38.5,
       'duty':0.43,'heater_on':true,'fan_commanded':true,'fan_proven':true,'fan_rpm':1500,
       'plate_c':45.2,'plate_uncertainty_k':0.5,'liquid_l':1.02,'level':'WELL','simulated':true,
       'presence_due_s':1800,'alarms':[],'withheld':[],'first_out':null,'log_ok':true,
       'current_print':null,'last_print':null,'forecast':null}
      """;

  private static final String BEFORE =
      """
      {'moment':'emergence','start_watching':'start watching from 3:10','expected_s':215,
       'window_80_s':[190.4,244.6],'window_95_s':[170.1,268],'open':false,'prints':12,
       'how_sure':'','words':'','caveats':['bromide not told']}
      """;

  private static final String PULL =
      """
      {'moment':'pull','start_watching':'start watching from 4:50','expected_s':315,'print':3,
       'window_80_s':[290,340],'window_95_s':[270,371],'open':false,'prints':1,
       'how_sure':'','words':'','caveats':[]}
      """;

  private static final String REFUSED =
      "{'words':'','refused':'no valid bath reading for too long: the watch no longer knows'}";

  private static final String ALARM =
      """
      [{'cause':'PRESENCE_DUE','state':'UNACKNOWLEDGED','latched':false,'priority_words':'act soon',
        'requirement':'SR-15','meaning':'Nobody was seen for 45 minutes.','why':'Heat is attended.',
        'action':'Touch the page, the pedal or the button.'}]
      """;

  @TempDir private Path folder;
  private StagedPage stage;
  private DarkBrowser browser;

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

  private static ObjectNode json(String text) throws Exception {
    return (ObjectNode) JSON.readTree(text.replace('\'', '"'));
  }

  private static ObjectNode with(ObjectNode node, String field, String value) throws Exception {
    node.set(field, JSON.readTree(value.replace('\'', '"')));
    return node;
  }

  /** Print 3 in the developer for so long, seconds; emergence marked where it came before. */
  private static ObjectNode inDeveloper(double elapsedS, String forecast) throws Exception {
    String emergence = elapsedS > 205 ? ",{'kind':'emergence','elapsed_s':205}" : "";
    String print =
        "{'id':3,'elapsed_s':" + elapsedS + ",'marks':[{'kind':'in','elapsed_s':0}" + emergence;
    return with(with(json(HOLDING), "current_print", print + "]}"), "forecast", forecast);
  }

  private static String ofPrint(String forecast) {
    return forecast.replace("{'moment'", "{'print':3,'moment'");
  }

  private void looksRight(String name) throws Exception {
    assertEquals("", wrongOf(name));
  }

  private String wrongOf(String name) throws Exception {
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

  private void shows(ObjectNode status, String mark) throws Exception {
    status.put("fan_rpm", mark.hashCode() % 1000 + 2000);
    stage.say(status.toString());
    browser.awaitText("fan-small", status.path("fan_rpm").asText());
  }

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
        inDeveloper(755, PULL.replace("290,340", "790,905").replace("270,371", "760,999").replace("4:50", "13:10")));
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

  private static final String IN_TRAY =
      """
      {'bath':{'id':4,'name':'second brew','litres_now':1.021,'contents':{'litres':1.02,
        'give_or_take_l':0.03,'bromide_g_per_l':1.204,'bromide_give_or_take_g_per_l':0.1}},
       'again':[{'what':'developer A','millilitres':20,'dilution':'1+7'},
        {'what':'water','millilitres':50,'dilution':''},{'what':'developer B','millilitres':20,
        'dilution':''},{'what':'bromide 10 % solution','millilitres':7.5,'dilution':''},
        {'what':'sulfite 10 % solution','millilitres':5,'dilution':''}]}
      """;

  @Test
  void thePanelOfAdditionsIsOneRowOfBigButtonsAndClosesForTheSheet() throws Exception {
    stage.answer("GET /api/in-tray", json(IN_TRAY).toString());
    shows(inDeveloper(95, ofPrint(BEFORE)), "in");
    browser.find("adds-open").click();
    browser.awaitText("adds-words", "second brew: 1.02 ± 0.03 l, bromide 1.20 ± 0.10 g/l");
    assertEquals(7, browser.find("adds-list").findElements(By.tagName("button")).size());
    looksRight("page-adds");
    shows(inDeveloper(200, ofPrint(BEFORE).replace("false", "true")), "open");
    browser.awaitText("watch-words", "watch now");
    assertFalse(browser.find("adds").isDisplayed(), "the sheet comes first");
  }

  @Test
  void withoutABathInTheTrayThePanelSaysHowToPutOneIn() throws Exception {
    stage.answer("GET /api/in-tray", "{\"bath\":null,\"again\":[]}");
    browser.driver.switchTo().activeElement().sendKeys("d");
    browser.awaitText("adds-words", "no bath in the tray");
    assertEquals(1, browser.find("adds-list").findElements(By.tagName("button")).size());
    looksRight("page-adds-no-bath");
    browser.driver.switchTo().activeElement().sendKeys(Keys.ESCAPE);
    browser.awaitTrue("document.getElementById('adds').hidden");
  }

  @Test
  void whiteLightWantsTwoSecondsAndLettingGoCancels() throws Exception {
    browser.driver.executeScript("document.documentElement.dataset.here = 'dark'");
    new Actions(browser.driver).clickAndHold(browser.find("white")).perform();
    browser.awaitTrue("document.getElementById('white').classList.contains('held')");
    browser.pure("page-hold");
    new Actions(browser.driver).release().perform();
    browser.awaitTrue("!document.getElementById('white').classList.contains('held')");
    browser.find("white").click();
    assertEquals("dark", browser.driver.executeScript("return document.documentElement.dataset.here"));
    assertTrue(
        stage.asked().stream().noneMatch(a -> a.contains("white")), "nothing of it is fetched");
    new Actions(browser.driver).clickAndHold(browser.find("white")).perform();
    browser.awaitTrue("location.pathname === '/white.html'");
  }

  @Test
  void whiteLightIsReachedByAHeldKeyButNotWithASheetIn() throws Exception {
    shows(inDeveloper(95, ofPrint(BEFORE)), "in");
    new Actions(browser.driver).keyDown("w").perform();
    browser.awaitText("message", "no white light: a print is in the developer");
    new Actions(browser.driver).keyUp("w").perform();
    shows(json(HOLDING), "out");
    new Actions(browser.driver).keyDown("w").perform();
    browser.awaitText("message", "hold on");
    shows(inDeveloper(1, ofPrint(BEFORE)), "in again");
    browser.awaitText("message", "no white light: a print is in the developer");
    new Actions(browser.driver).keyUp("w").perform();
    shows(json(HOLDING), "out again");
    new Actions(browser.driver).keyDown("w").perform();
    browser.awaitTrue("location.pathname === '/white.html'");
  }

  @Test
  void aLongPressOnTheLastMarkTakesItBackAndMarksNothing() throws Exception {
    stage.answer("POST /api/marks/undo", "{\"undone\":\"emergence\",\"print\":{\"id\":3}}");
    shows(inDeveloper(230, PULL), "emerged");
    new Actions(browser.driver).clickAndHold(browser.find("emergence")).perform();
    browser.awaitTrue("document.getElementById('emergence').classList.contains('held')");
    browser.pure("page-undo-held");
    browser.awaitText("message", "emergence of print 3 taken back");
    new Actions(browser.driver).release().perform();
    assertTrue(
        stage.asked().stream().noneMatch(a -> a.startsWith("POST /api/marks {")), "no mark made");
    browser.find("pull").click();
    browser.awaitText("message", "pull marked");
    browser.driver.switchTo().activeElement().sendKeys("u");
    browser.awaitText("message", "emergence of print 3 taken back");
    assertEquals(
        2, stage.asked().stream().filter(a -> a.startsWith("POST /api/marks/undo")).count());
  }
}
