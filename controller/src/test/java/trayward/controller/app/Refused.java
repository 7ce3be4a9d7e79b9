package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.function.Executable;

/** What a refusal of settings must look like: one line that names what a person needs. */
final class Refused {

  private Refused() {}

  static String line(Executable reading) {
    String line = assertThrows(ConfigRefused.class, reading).line();
    assertEquals(1, line.lines().count(), line);
    assertTrue(line.chars().noneMatch(Character::isISOControl), line);
    return line;
  }

  static void names(String line, String... words) {
    for (String word : words) {
      assertTrue(line.contains(word), () -> "'" + word + "' is not in: " + line);
    }
  }
}
