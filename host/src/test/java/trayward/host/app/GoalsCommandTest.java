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
import trayward.host.app.goals.Goals;

/** Words and exit codes of {@code goals}. */
class GoalsCommandTest {

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
    assertEquals(2, say("goals", "--trays", "0", "--out", to));
    assertTrue(err.toString(StandardCharsets.UTF_8).contains("found 0, accepted is 1 to 1000"));
    assertEquals(2, say("goals", "--trays", "1001", "--out", to));
    assertEquals(2, say("goals", "--trays", "x", "--out", to));
    assertEquals(2, say("goals", "--trays", "1", "--seed", "-1", "--out", to));
    assertEquals(2, say("goals", "--trays", "1"));
    assertFalse(Files.exists(folder.resolve("out")));
    assertEquals("", out.toString(StandardCharsets.UTF_8));
  }

  @Test
  void aFolderThatCannotBeMadeExitsOne() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "");
    assertEquals(1, say("goals", "--trays", "1", "--out", file.resolve("x").toString()));
  }

  @Test
  void aGoalMissedExitsOne() {
    assertEquals(1, Main.code(new Goals.Result(false, "")));
    assertEquals(0, Main.code(new Goals.Result(true, "")));
  }
}
