package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import trayward.controller.PrintedNote;
import trayward.controller.quantity.Range;

/** The table of intervals in code is the one in the notes. */
class UpkeepNoteTest {

  private static final Path NOTE = Path.of("..", "hardware-notes", "upkeep.md");

  private static String printed() {
    StringBuilder out = new StringBuilder();
    out.append("# Upkeep\n\n");
    out.append("What is looked after by date (SR-23), printed from the table in code");
    out.append(" (`trayward.controller.keep.UpkeepItem`).\nEach is a key of `[upkeep]`.");
    out.append(
        " An overdue breaker test, or a clock that is not set, asks to confirm a start.\n\n");
    out.append("| key | what | default | accepted | why |\n|---|---|---|---|---|\n");
    for (UpkeepItem item : UpkeepItem.values()) {
      row(out, item.key(), item.words(), item.standardDays(), item.range(), item.reason());
    }
    row(
        out,
        UpkeepItem.CARTRIDGE_HOURS_KEY,
        "respirator cartridge, hours in vapour",
        UpkeepItem.CARTRIDGE_HOURS,
        UpkeepItem.CARTRIDGE_HOURS_RANGE,
        "Counted while heat is on or the bath is warm: common practice. The maker's advice rules.");
    return out.toString();
  }

  private static void row(
      StringBuilder out, String key, String what, double standard, Range range, String why) {
    out.append("| `").append(key).append("` | ").append(what).append(" | ");
    out.append(Range.plain(standard)).append(' ').append(range.unit()).append(" | ");
    out.append(range.words()).append(" | ").append(why).append(" |\n");
  }

  @Test
  void theNotesSayWhatTheCodeSays() throws IOException {
    PrintedNote.assertSays(printed(), NOTE);
  }

  @Test
  void everyIntervalHasAReasonAndADefaultWithinItsRange() {
    for (UpkeepItem item : UpkeepItem.values()) {
      assertTrue(item.range().contains(item.standardDays()), item.key());
      assertTrue(item.reason().length() > 20, item.key());
      assertEquals(item, UpkeepItem.of(item.path()).orElseThrow());
    }
  }
}
