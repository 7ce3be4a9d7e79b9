package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A tray identified from the trace of a warm-up whose truth is known. */
@Timeout(120)
class IdentifyTest {

  @TempDir private Path folder;

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

  private Path traced(long seed, String tables) throws Exception {
    Path scenario =
        Files.writeString(
            folder.resolve("s.toml"),
            "seed = "
                + seed
                + "\nduration_s = 1400\n"
                + tables
                + "\n[[at]]\nt_s = 0\ndo = \"start\"\n");
    assertEquals(0, say("rehearse", scenario.toString(), "--out", folder.toString()).code());
    return folder.resolve("trace.csv");
  }

  private JsonNode identified(Path trace, String... options) throws Exception {
    List<String> words = new java.util.ArrayList<>(List.of("identify", trace.toString(), "--json"));
    words.addAll(List.of(options));
    Said said = say(words.toArray(String[]::new));
    assertEquals(0, said.code(), said.err());
    return new ObjectMapper().readTree(said.out());
  }

  private static void near(double truth, JsonNode ratios, String name, double share) {
    double found = ratios.path(name).path("value").asDouble();
    assertEquals(truth, found, share * truth, name);
  }

  /**
   * The truth is that of reference-tray: P 250, Cp 1100, UA 18, Cb 4180, Lb 2.5, A 0.072, V 0.15.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void theRatiosOfTheReferenceTrayComeOutWithinFivePercent(long seed) throws Exception {
    JsonNode found = identified(traced(seed, ""));
    JsonNode ratios = found.path("ratios");
    near(250 / 1100.0, ratios, "heater_over_plate_k_per_s", 0.05);
    near(18 / 1100.0, ratios, "coupling_over_plate_per_s", 0.05);
    near(18 / 4180.0, ratios, "coupling_over_bath_per_s", 0.05);
    near(2.5 / 4180.0, ratios, "loss_over_bath_per_s", 0.05);
    double evaporation = 1000 * 0.072 * (0.089 + 0.0782 * 0.15) / 4180;
    near(evaporation, ratios, "evaporation_over_bath_k_per_s_per_kpa", 0.05);
    // At 40 °C: duty 0.431, plate 45.28 °C, losses 2.5 · 20 + 45.0 W.
    assertEquals(0.431, found.path("regulator").path("hold_duty").asDouble(), 0.05 * 0.431);
    assertEquals(45.28, found.path("regulator").path("hold_plate_c").asDouble(), 0.2);
    assertEquals(95 / 4180.0, found.path("cooling_at_set_k_per_s").asDouble(), 0.02 * 95 / 4180);
    assertTrue(found.path("rms_k").asDouble() < 0.04);
  }

  /**
   * Another tray than the one believed beforehand: what one warm-up shows, it shows all the same.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aTrayNobodyWouldHaveGuessedComesOutToo(long seed) throws Exception {
    String tray =
        """
        [tray]
        plate_j_per_k = 700
        plate_to_bath_w_per_k = 26
        bath_loss_w_per_k = 3.6
        evaporation_factor = 1.3
        [model]
        heater_w = 250
        liquid_l = 1.0
        """;
    JsonNode found = identified(traced(seed, tray));
    JsonNode ratios = found.path("ratios");
    near(250 / 700.0, ratios, "heater_over_plate_k_per_s", 0.05);
    near(26 / 700.0, ratios, "coupling_over_plate_per_s", 0.05);
    near(26 / 4180.0, ratios, "coupling_over_bath_per_s", 0.05);
    double cooling = (3.6 * 20 + 1.3 * 45.0) / 4180;
    assertEquals(cooling, found.path("cooling_at_set_k_per_s").asDouble(), 0.05 * cooling);
  }

  /**
   * Declared watts and litres move what is absolute, and leave the ratios but for what the plate
   * loses, believed in W/K (a sixth of 0.5 W/K at 30 K is 1 % of the heat), and for the wall,
   * believed in J/K, which is another 1 % of the bath's.
   */
  @Test
  void wattsAndLitresAreAsGoodAsTheyWereDeclared() throws Exception {
    Path trace = traced(1, "");
    JsonNode one = identified(trace);
    JsonNode other = identified(trace, "--litres", "1.2", "--watts", "300");
    for (String name : List.of("heater_over_plate_k_per_s", "coupling_over_bath_per_s")) {
      double truth = one.path("ratios").path(name).path("value").asDouble();
      near(truth, other.path("ratios"), name, 0.03);
    }
    JsonNode litres = other.path("litres");
    // Within half of its own uncertainty, below.
    assertEquals(1.2, litres.path("value").asDouble(), 0.06);
    // Heater and jug within 8 % each leave 8 %/sqrt 2 of each other; twice that is 11 %.
    assertEquals(0.11 * 1.2, litres.path("uncertainty").asDouble(), 0.01);
    assertTrue(
        other.path("tray").path("heater_w").path("uncertainty").asDouble() > 0.1 * 300,
        "temperatures alone show no watts");
  }

  @Test
  void withoutAPlateProbeItWorksToo() throws Exception {
    JsonNode found = identified(traced(2, "[plate_probe]\npresent = false\n"));
    near(18 / 4180.0, found.path("ratios"), "coupling_over_bath_per_s", 0.4);
    double cooling = 95 / 4180.0;
    assertEquals(cooling, found.path("cooling_at_set_k_per_s").asDouble(), 0.1 * cooling);
  }

  @Test
  void whatAColdPourDoesIsNoPartOfTheWarmUp() throws Exception {
    Path trace = traced(3, "[[at]]\nt_s = 500\ndo = \"pour\"\nlitres = 0.3\ntemp_c = 20\n");
    JsonNode found = identified(trace);
    assertTrue(found.path("warm_up").path("to_s").asDouble() < 501);
    near(250 / 1100.0, found.path("ratios"), "heater_over_plate_k_per_s", 0.05);
  }

  @Test
  void forAPersonItIsATableWithUncertaintiesAndSettings() throws Exception {
    Said said = say("identify", traced(1, "").toString());
    assertEquals(0, said.code(), said.err());
    for (String part :
        List.of("heater_w", "(k = 2)", "about 1.0 L, as set", "SIMC", "hold duty", "°C")) {
      assertTrue(said.out().contains(part), said.out());
    }
  }

  private static final String HEAD = "t_s,bath_c,plate_c,set_c,heater_command,safety_relay\n";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'' | line 1: found nothing, accepted is a header with t_s",
        "t_s,bath_c | line 1: found no column plate_c, accepted is a header",
        "H0,20,20,40,1 | line 2: found 5 fields, accepted is as many as the header has",
        "H0,warm,20,40,1,1 | line 2, bath_c: found 'warm', accepted is a number or nothing",
        "H0,20,20,,1,1 | line 2, set_c: found '', accepted is a number",
        "H0,20,20,40,2,1 | line 2, heater_command: found '2', accepted is 0 or 1",
        "H0,NaN,20,40,1,1 | line 2, bath_c: found 'NaN', accepted is a number or nothing",
        "H0,20,20,40,1,1N0,20,20,40,1,1 | line 3, t_s: found 0, accepted is a time later",
        "H0,20,20,40,1,1 | rows: found 1, accepted is a row for each scan",
        "H0,20,20,40,1,1N1,20,20,40,1,1 | rows: found no warm-up, accepted is a bath that rises",
      })
  void aBadTraceIsOneLineWithPlaceFoundAndAccepted(String text, String line) throws Exception {
    Path trace =
        Files.writeString(
            folder.resolve("trace.csv"),
            text.replace("H", HEAD).replace("N", text.contains("NaN") ? "N" : "\n"));
    Said said = say("identify", trace.toString());
    assertEquals(2, said.code());
    assertEquals(1, said.err().lines().count(), said.err());
    assertTrue(said.err().startsWith(trace + ": " + line), said.err());
  }

  @Test
  void bytesThatAreNoTextAndAFileThatIsNotThereAreOneLine() throws Exception {
    Path trace =
        Files.write(folder.resolve("trace.csv"), new byte[] {(byte) 0xff, 10, (byte) 0xfe});
    for (Path file : List.of(trace, folder.resolve("none.csv"), folder)) {
      Said said = say("identify", file.toString());
      assertEquals(2, said.code());
      assertEquals(1, said.err().lines().count(), said.err());
    }
  }

  @ParameterizedTest
  @CsvSource({"--litres,21", "--watts,5", "--air,50", "--humidity,1.1", "--draught,-1"})
  void anOptionOutOfItsRangeIsOneLine(String option, String value) {
    Said said = say("identify", "trace.csv", option + "=" + value);
    assertEquals(2, said.code());
    assertTrue(said.err().startsWith(option + ": found " + value + ", accepted is "), said.err());
    assertEquals(1, said.err().lines().count(), said.err());
  }
}
