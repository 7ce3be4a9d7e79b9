package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trayward.controller.PrintedNote;
import trayward.controller.quantity.Range;

/** The table of limits in code is the one in the notes. */
class LimitsNoteTest {

  private static final Path NOTE = Path.of("..", "hardware-notes", "limits.md");

  private static String printed() {
    StringBuilder out = new StringBuilder();
    out.append("# Limits\n\n");
    out.append(
        "Printed from the table in code (`trayward.controller.safety.Limit`). Each is a key");
    out.append(" of `[limits]`.\n\n");
    out.append("| key | default | accepted | requirement | why |\n|---|---|---|---|---|\n");
    for (Limit limit : Limit.values()) {
      out.append("| `").append(limit.key()).append("` | ");
      out.append((Range.plain(limit.standard()) + " " + limit.unit()).trim()).append(" | ");
      out.append(limit.range().words()).append(" | ");
      out.append(limit.requirement()).append(" | ").append(limit.reason()).append(" |\n");
    }
    return out.toString();
  }

  @Test
  void theNotesSayWhatTheCodeSays() throws IOException {
    PrintedNote.assertSays(printed(), NOTE);
  }

  @Test
  void everyLimitHasAKeyOfItsOwnAReasonAndADefaultWithinItsRange() {
    Set<String> keys = new HashSet<>();
    for (Limit limit : Limit.values()) {
      assertTrue(keys.add(limit.key()), limit.key());
      assertTrue(limit.range().contains(limit.standard()), limit.key());
      assertTrue(limit.reason().length() > 20, limit.key());
      assertTrue(Requirement.of(limit.requirement()).isPresent(), limit.requirement());
    }
  }
}
