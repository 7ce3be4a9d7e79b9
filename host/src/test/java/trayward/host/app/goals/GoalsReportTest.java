package trayward.host.app.goals;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;

/** Text, note, JSON and picture of figures known by hand. */
class GoalsReportTest {

  private static final Measured MISSING = Known.heatUps(1.01, 1.08, Double.POSITIVE_INFINITY);

  private static String line(String text, String begins) {
    return text.lines().filter(l -> l.startsWith(begins)).findFirst().orElseThrow();
  }

  private static List<String> cells(String line) {
    return List.of(line.trim().split("\\s*\\|\\s*|\\s\\s+"));
  }

  @Test
  void theTableSaysGoalFiguresSeedVerdictAndTheOthers() {
    String text = GoalsText.of(MISSING, 12);
    assertEquals(
        List.of(
            "heat-up, x bound", "1.05", "never", "never", "1.080", "3 MISSED", "2.020", "never"),
        cells(line(text, "heat-up")));
    assertTrue(
        text.contains("MISSED by 2 of 3 trays: two probes, unknown tray, heat-up, x bound"), text);
    assertTrue(text.contains("30 of 31 goals met."), text);
    assertTrue(text.contains("3 trays from seed 1, 12 s"), text);
  }

  @Test
  void theNoteNamesTheWorstTraysSoThatTheyCanBeRunAgain() {
    String note = GoalsNote.of(MISSING, 12);
    assertEquals(
        List.of(
            "",
            "heat-up, x bound",
            "1.05",
            "never",
            "never",
            "1.080",
            "3",
            "MISSED",
            "2.020",
            "2.020",
            "never",
            "never"),
        cells(line(note, "| heat-up")));
    TrayDraw worst = TrayDraw.of(3, true);
    String row = line(note, "| two-probes | 3 |");
    assertTrue(row.contains(String.format(java.util.Locale.ROOT, "%.4g", worst.liquidL())), row);
    assertTrue(note.contains("](goals.svg)"), note);
  }

  @Test
  void theJsonHoldsEverySpreadAndEveryTray() throws Exception {
    JsonNode json = new ObjectMapper().readTree(GoalsJson.of(MISSING));
    assertEquals(3, json.get("trays").asInt());
    assertEquals(1, json.get("goals_missed").asInt());
    JsonNode first = json.get("cases").get(0);
    assertEquals("two-probes", first.get("case").asText());
    JsonNode heatUp = first.get("measures").get(0);
    assertEquals("heat_up", heatUp.get("measure").asText());
    assertEquals(1.05, heatUp.get("goal").asDouble());
    assertTrue(!heatUp.get("met").asBoolean() && heatUp.get("ours").get("worst").isNull());
    assertEquals(1.08, heatUp.get("ours").get("median").asDouble());
    assertEquals(1, heatUp.get("ours").get("never").asInt());
    assertEquals(3, heatUp.get("ours").get("worst_seed").asInt());
    assertEquals(3, json.get("drawn").size());
    JsonNode tray = json.get("drawn").get(1);
    assertEquals(TrayDraw.of(2, false).heaterW(), tray.at("/no_plate_probe/heater_w").asDouble());
    assertEquals(1.08, tray.at("/figures/two-probes/ours/heat_up").asDouble());
  }

  /** A dot for each tray, case, contender and panel, and three in the legend. */
  @Test
  void thePictureIsWellFormedAndHasADotForEachTray() throws Exception {
    String svg = GoalsPlot.of(MISSING);
    var document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    assertEquals("svg", document.getDocumentElement().getTagName());
    assertEquals(3 + 3 * 4 * 3 * 3, document.getElementsByTagName("circle").getLength());
    assertTrue(!svg.contains("NaN") && !svg.contains("Infinity"), svg);
  }
}
