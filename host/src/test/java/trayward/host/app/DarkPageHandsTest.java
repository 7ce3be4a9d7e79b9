package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.app.StagedStatus.BEFORE;
import static trayward.host.app.StagedStatus.HOLDING;
import static trayward.host.app.StagedStatus.PULL;
import static trayward.host.app.StagedStatus.inDeveloper;
import static trayward.host.app.StagedStatus.json;
import static trayward.host.app.StagedStatus.ofPrint;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** What hands do on the dark page: add, take back, hold for white light. */
@Timeout(300)
@Tag("full")
class DarkPageHandsTest extends DarkPageOnStage {

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
    assertEquals(
        "dark", browser.driver.executeScript("return document.documentElement.dataset.here"));
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

  @Test
  void aHeldSpaceBarFillsTheButtonByStepsWhereMotionIsUnwanted() throws Exception {
    browser.driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
    browser.driver.executeScript("document.getElementById('white').focus()");
    new Actions(browser.driver).keyDown(Keys.SPACE).perform();
    browser.awaitTrue("document.getElementById('white').classList.contains('held')");
    String timing =
        "getComputedStyle(document.getElementById('white'), '::after').transitionTimingFunction";
    assertEquals("steps(4)", browser.driver.executeScript("return " + timing));
    browser.awaitTrue("location.pathname === '/white.html'");
  }

  /** Three hundred kilobytes, and nothing from elsewhere. */
  @Test
  void thePageIsSmallAndWholeByItself() {
    Object wrong =
        browser.driver.executeScript(
            "const all = performance.getEntriesByType('resource')"
                + ".concat(performance.getEntriesByType('navigation'));"
                + "const bytes = all.reduce((sum, one) => sum + one.decodedBodySize, 0);"
                + "const outside = all.map((one) => one.name)"
                + ".filter((name) => !name.startsWith(location.origin) && !name.startsWith('data:'));"
                + "return (bytes < 300000 ? '' : bytes + ' bytes ') + outside.join(' ');");
    assertEquals("", wrong);
  }
}
