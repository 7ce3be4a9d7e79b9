package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** No page makes markup of a text, and none has script or style of its own in it. */
class NoMarkupTest {

  private static final Path PAGES = Path.of("src", "main", "resources", "trayward", "page");

  private static final Pattern MAKES_MARKUP =
      Pattern.compile(
          "innerHTML|outerHTML|insertAdjacentHTML|document\\.write|createContextualFragment"
              + "|DOMParser|\\beval\\(|new Function|setTimeout\\(['\"]|javascript:");

  private static final Pattern INLINE =
      Pattern.compile("<script(?![^>]*\\bsrc=)|<style|\\son[a-z]+=|\\sstyle=|https?://(?!127)");

  private static List<Path> files(String end) throws Exception {
    try (Stream<Path> all = Files.list(PAGES)) {
      List<Path> found = all.filter(file -> file.toString().endsWith(end)).sorted().toList();
      assertTrue(found.size() >= 3, end + ": " + found);
      return found;
    }
  }

  @Test
  void noScriptMakesMarkupOfAText() throws Exception {
    for (Path file : files(".js")) {
      assertFalse(MAKES_MARKUP.matcher(Files.readString(file)).find(), file.toString());
    }
  }

  @Test
  void noPageHasScriptOrStyleInIt() throws Exception {
    for (Path file : files(".html")) {
      assertFalse(INLINE.matcher(Files.readString(file)).find(), file.toString());
    }
  }
}
