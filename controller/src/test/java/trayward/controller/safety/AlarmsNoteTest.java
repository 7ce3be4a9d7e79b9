package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trayward.controller.PrintedNote;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.Priority;
import trayward.controller.event.TripCause;
import trayward.controller.event.Warning;
import trayward.controller.quantity.Range;

/** The table of alarms in code is the one in the notes. */
class AlarmsNoteTest {

  private static final Path NOTE = Path.of("..", "hardware-notes", "alarms.md");

  private static String printed() {
    StringBuilder out = new StringBuilder();
    out.append("# Alarms\n\n");
    out.append("Printed from the tables in code (`trayward.controller.event.TripCause`,");
    out.append(" `Warning`, `Priority` and\n`trayward.controller.safety.AlarmDelay`), with the");
    out.append(" delays at their defaults; each named one is a key of [limits](limits.md).\n\n");
    out.append("A priority says how soon to act: ");
    for (Priority priority : Priority.values()) {
      out.append(priority == Priority.CRITICAL ? "" : ", ");
      out.append(priority).append(" *").append(priority.words()).append('*');
    }
    out.append(". It follows from the harm where nobody acts, and the time there is to act.\n");
    out.append("An alarm that **latches** locks out and holds until it is acknowledged, its cause");
    out.append(" is gone and a person at the tray resets it.\nAny other goes when its condition");
    out.append(" has gone and somebody has acknowledged it. LOW does not sound.\n\n");
    out.append("Delay off, of every alarm: `").append(AlarmDelay.OFF.key()).append("` ");
    out.append(Range.plain(AlarmDelay.OFF.standard())).append(' ').append(AlarmDelay.OFF.unit());
    out.append(". A condition that comes and goes within it is one alarm, and one entry in the");
    out.append(" alarm record; what a trip's\nreset needs has no such delay.\n\n");
    out.append("| alarm | requirement | priority | because | what | what to do | delay on |");
    out.append(" latches |\n|---|---|---|---|---|---|---|---|\n");
    for (AlarmCause cause : AlarmCause.all()) {
      out.append("| ").append(cause.name()).append(" | ").append(cause.requirement());
      out.append(" | ").append(cause.priority()).append(" | ").append(cause.why());
      out.append(" | ").append(cause.meaning()).append(" | ").append(cause.action());
      out.append(" | ").append(AlarmDelay.onWords(cause)).append(" | ");
      out.append(AlarmDelay.latches(cause) ? "yes" : "no").append(" |\n");
    }
    return out.toString();
  }

  @Test
  void theNotesSayWhatTheCodeSays() throws IOException {
    PrintedNote.assertSays(printed(), NOTE);
  }

  @Test
  void everyAlarmHasANameOfItsOwnARequirementAndItsTexts() {
    Set<String> names = new HashSet<>();
    for (AlarmCause cause : AlarmCause.all()) {
      assertTrue(names.add(cause.name()), cause.name());
      assertTrue(Requirement.of(cause.requirement()).isPresent(), cause.name());
      assertTrue(cause.meaning().length() > 20, cause.name());
      assertTrue(cause.why().length() > 20, cause.name());
      assertTrue(cause.action().length() > 20, cause.name());
      assertEquals(cause, AlarmCause.of(cause.name()).orElseThrow());
    }
    assertEquals(TripCause.values().length + Warning.values().length, names.size());
    assertTrue(AlarmCause.of("KETTLE").isEmpty());
  }
}
