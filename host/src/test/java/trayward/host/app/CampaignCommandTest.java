package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.app.campaign.Campaign;

/** Words and exit codes of {@code campaign}. */
class CampaignCommandTest {

  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int say(String... words) {
    return Main.run(
        words,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  @Test
  void wrongWordsExitTwoAndWriteNothing() {
    String to = folder.resolve("out").toString();
    assertEquals(2, say("campaign", "--seeds", "0", "--out", to));
    assertTrue(err.toString(StandardCharsets.UTF_8).contains("found 0, accepted is 1 to 1000000"));
    assertEquals(2, say("campaign", "--seeds", "1000001", "--out", to));
    assertEquals(2, say("campaign", "--seeds", "x", "--out", to));
    assertEquals(2, say("campaign", "--seeds", "1", "--from", "-1", "--out", to));
    assertEquals(2, say("campaign", "--seeds", "1"));
    assertFalse(Files.exists(folder.resolve("out")));
  }

  @Test
  void aCampaignWritesItsReportAndExitsZeroWhereNothingIsWrong() throws Exception {
    Path to = folder.resolve("out");
    assertEquals(0, say("campaign", "--seeds", "3", "--out", to.toString()));
    assertTrue(out.toString(StandardCharsets.UTF_8).contains("0 with a violation"));
    assertEquals(0, Files.size(to.resolve("violations.txt")));
    assertTrue(Files.readString(to.resolve("campaign.csv")).startsWith("fault,sessions,"));
    assertTrue(Files.exists(to.resolve("campaign.md")));
  }

  @Test
  void aFolderThatCannotBeMadeExitsOne() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "");
    assertEquals(1, say("campaign", "--seeds", "1", "--out", file.resolve("x").toString()));
  }

  @Test
  void aViolationExitsOne() {
    assertEquals(1, Main.code(new Campaign.Result(false, "")));
    assertEquals(0, Main.code(new Campaign.Result(true, "")));
  }
}
