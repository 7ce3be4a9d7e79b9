package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(120)
class KilledPictureTest {

  @TempDir Path folder;

  @Test
  void aProgramKilledAtHalfAPictureLeavesNoneListedAndNoHalfFile() throws Exception {
    Process program =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                KilledPicture.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try (BufferedReader says = program.inputReader(StandardCharsets.UTF_8)) {
      String line = says.readLine();
      while (line != null && !line.equals("half a picture")) {
        line = says.readLine();
      }
      assertEquals("half a picture", line);
      assertEquals(2, files(), "what comes in and the small one have temporary names");
    } finally {
      program.destroyForcibly().waitFor();
    }
    try (TrayLog log = LogFile.open(folder)) {
      assertEquals(List.of(), log.archive().entries(1).pictures());
      assertEquals(0, files());
    }
  }

  private long files() throws Exception {
    try (Stream<Path> all = Files.list(folder.resolve("pictures"))) {
      return all.count();
    }
  }
}
