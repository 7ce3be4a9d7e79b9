package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The planners on the command line. */
class PlanCommandTest {

  /** What was said and how it ended. */
  private record Said(int code, String out, String err) {}

  private static Said say(String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Main.run(
            words,
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8));
    return new Said(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private static Said plan(String words) {
    return say(("plan " + words).split(" ", -1));
  }

  @Test
  void aPlanIsTextForPeopleAndOneDocumentForMachines() throws Exception {
    Said text = plan("air --volume 15 --flow 150 --mixing 1");
    assertEquals(0, text.code(), text.err());
    // CDC MMWR 1994;43(RR-13), table S3-1: 28 min at 10 air changes an hour.
    assertTrue(text.out().contains("purge that takes away 99 %: 27.6 min"), text.out());
    assertTrue(text.out().contains("A filter mask is no interlock"), text.out());
    Said json = plan("air --volume 15 --flow 150 --mixing 1 --json");
    JsonNode document = new ObjectMapper().readTree(json.out());
    assertEquals(27.631, document.path("purge_min").asDouble(), 0.001);
    assertEquals("", json.err());
  }

  @Test
  void hyphensFlagsFractionsAndLessThanNothingAreUnderstood() throws Exception {
    Said json = plan("exposure --time 8 --stops -7/3 --strip-step=1/3 --json");
    JsonNode document = new ObjectMapper().readTree(json.out());
    assertEquals(8 / 5.0397, document.path("time_s").asDouble(), 0.001);
    assertEquals(32, document.path("strip_totals_s").path(6).asDouble());
    Said covered = plan("heat --cover --json");
    JsonNode heat = new ObjectMapper().readTree(covered.out());
    assertTrue(heat.path("asked").path("cover").asBoolean(), covered.out());
    assertEquals(0, heat.path("evaporation_w").asDouble());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "air --flow 150 | --volume: found nothing, accepted is 0.05 to 10000 m³",
        "air --volume 0 --flow 150 | --volume: found 0, accepted is 0.05 to 10000 m³",
        "air --volume 15 --flow 0 | --flow: found 0, accepted is 1 to 100000 m³/h",
        "heat --humidity 1.2 | --humidity: found 1.2, accepted is 0 to 1",
        "exposure --time 8 --from-f 0 --to-f 8 | --from-f: found 0, accepted is 0.5 to 128",
        "mix --hot 55 --cold 15 --hot-litres 1 | --cold-litres: found nothing, accepted is 0 to 20 L",
        "bath --litres 1 | --dilution: found nothing, accepted is parts joined by +, such as 1+7"
      })
  void wrongWordsAreOneLineThatNamesOptionFoundAndAccepted(String words, String line) {
    Said said = plan(words);
    assertEquals(2, said.code());
    assertEquals(line, said.err().strip());
    assertEquals("", said.out());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"air --colour red", "weather", "heat --litres", "heat --litres 1 --litres 2"})
  void wordsThatAreNoneAreOneLineToo(String words) {
    Said said = plan(words);
    assertEquals(2, said.code());
    assertEquals(1, said.err().lines().count(), said.err());
  }

  @Test
  void aPlanWithoutAPlannerIsOneLine() {
    Said said = say("plan");
    assertEquals(2, said.code());
    assertEquals(1, said.err().lines().count(), said.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "air ", "heat ", "mix ", "exposure ", "bath "})
  void helpIsEverywhere(String planner) {
    Said said = plan(planner + "--help");
    assertEquals(0, said.code());
    assertTrue(said.out().contains(("Usage: trayward plan " + planner).strip()), said.out());
  }

  @Test
  void helpNamesUnitsAndRanges() {
    String help = plan("heat --help").out().replaceAll("\\s+", " ");
    assertTrue(help.contains("--watts=W heater: 10 to 2000 W (default: 250)"), help);
    assertTrue(help.contains("--cover the tray is covered"), help);
    String air = plan("air --help").out().replaceAll("\\s+", " ");
    assertTrue(air.contains("50 to 99.99 % (default: 99)"), air);
  }
}
