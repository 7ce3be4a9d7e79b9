package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The files of the pages: small, whole, and nothing from elsewhere. */
class PageFilesTest {

  /** A Pi's browser over a slow network shows them in a second. */
  private static final long MOST_BYTES = 300_000;

  private static final Path PAGES = Path.of("src", "main", "resources", "trayward", "page");

  private static List<Path> files() throws IOException {
    try (Stream<Path> all = Files.walk(PAGES)) {
      return all.filter(Files::isRegularFile).sorted().toList();
    }
  }

  @Test
  void allFilesTogetherAreSmall() throws Exception {
    long sum = 0;
    for (Path file : files()) {
      sum += Files.size(file);
    }
    assertTrue(sum > 0 && sum < MOST_BYTES, sum + " bytes");
  }

  @Test
  void theWhiteLightPagesLoadNothingFromElsewhereAndWriteNoMarkup() throws Exception {
    int looked = 0;
    for (Path file : files()) {
      if (file.getFileName().toString().startsWith("white")) {
        String text = Files.readString(file);
        assertFalse(text.contains("://"), file.toString());
        assertFalse(
            text.matches("(?s).*(innerHTML|outerHTML|insertAdjacentHTML|eval\\().*"),
            file.toString());
        assertFalse(text.matches("(?s).*<[^>]* (style|onclick)=.*"), file.toString());
        looked++;
      }
    }
    assertTrue(looked > 10, looked + " files");
  }

  @Test
  void everyModuleThatIsImportedIsThere() throws Exception {
    for (Path file : files()) {
      if (file.toString().endsWith(".js") && file.getFileName().toString().startsWith("white")) {
        Stream<String> named =
            java.util.regex.Pattern.compile("from '\\./([^']+)'")
                .matcher(Files.readString(file))
                .results()
                .map(m -> m.group(1));
        List<String> missing = named.filter(n -> !Files.exists(PAGES.resolve(n))).toList();
        assertEquals(List.of(), missing, file.toString());
      }
    }
    assertTrue(Files.exists(PAGES.resolve("uplot").resolve("LICENSE")), "its licence is with it");
  }
}
