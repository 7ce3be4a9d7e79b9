package trayward.controller.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trayward.controller.PrintedNote;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.AlarmState;
import trayward.controller.event.EventKind;
import trayward.controller.event.Warning;
import trayward.controller.event.WithheldReason;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.port.ProbeRole;
import trayward.controller.safety.Level;
import trayward.controller.sense.ReadingKind;

/** The table of registers in code is the one in the notes, and holds together. */
class DictionaryTest {

  private static final Path NOTE = Path.of("..", "hardware-notes", "registers.md");

  @Test
  void theNotesSayWhatTheCodeSays() throws IOException {
    PrintedNote.assertSays(RegistersNote.printed(), NOTE);
  }

  /** The first registers are an outer face, and stay where they are. */
  @Test
  void theFirstRegistersStandWhereTheContractHasThem() {
    List<Entry> first =
        List.of(
            StatusRegisters.MAP_VERSION,
            StatusRegisters.SCAN,
            StatusRegisters.STATE,
            StatusRegisters.BATH,
            StatusRegisters.SECOND_BATH,
            StatusRegisters.PLATE,
            StatusRegisters.SET,
            StatusRegisters.FAN_RPM,
            StatusRegisters.FIRST_OUT,
            StatusRegisters.DUTY);
    for (int i = 0; i < first.size(); i++) {
      assertEquals(i, first.get(i).address(), first.get(i).name());
    }
  }

  @Test
  void everyNameIsGivenOnceAndNoTwoValuesOverlap() {
    Set<String> names = new HashSet<>();
    int free = 0;
    for (Entry entry : Dictionary.INPUTS) {
      assertTrue(names.add(entry.name()), entry.name());
      assertTrue(entry.address() >= free, entry.name());
      assertTrue(entry.meaning().length() > 3, entry.name());
      free = entry.address() + entry.words();
    }
  }

  /** The application protocol allows 125 registers in one read, section 6.4. */
  @Test
  void everyBlockIsOneRead() {
    assertTrue(StatusRegisters.WORDS <= 125);
    assertTrue(TrayRegisters.WORDS <= 125);
    assertTrue(UpkeepRegisters.WORDS <= 125);
    assertTrue(ProbeRegisters.WORDS <= 125);
    assertTrue(AnswerRegisters.WORDS <= 125);
    assertTrue(2 * EventRegisters.EACH <= 125);
  }

  @Test
  void everyNameThatCanComeHasANumber() {
    assertEquals(EnumSet.allOf(ReadingKind.class), EnumSet.copyOf(Codes.READING.names()));
    assertEquals(EnumSet.allOf(WithheldReason.class), EnumSet.copyOf(Codes.WITHHELD.names()));
    assertEquals(EnumSet.allOf(AlarmState.class), EnumSet.copyOf(Codes.ALARM_STATE.names()));
    assertEquals(EnumSet.allOf(Warning.class), EnumSet.copyOf(Codes.WARNING.names()));
    assertEquals(EnumSet.allOf(EventKind.class), EnumSet.copyOf(Codes.EVENT.names()));
    assertEquals(EnumSet.allOf(Level.class), EnumSet.copyOf(Codes.LEVEL.names()));
    assertEquals(EnumSet.allOf(ProbeRole.class), EnumSet.copyOf(Codes.PROBE.names()));
    assertEquals(EnumSet.allOf(UpkeepItem.class), EnumSet.copyOf(Codes.UPKEEP.names()));
    assertEquals(EnumSet.allOf(CommandResult.Outcome.class), EnumSet.copyOf(Codes.OUTCOME.names()));
    Set<Integer> causes = new HashSet<>();
    for (AlarmCause cause : AlarmCause.all()) {
      assertTrue(causes.add(Codes.cause(cause)), cause.name());
      assertEquals(cause, Codes.causeOf(Codes.cause(cause)).orElseThrow());
    }
  }

  @Test
  void whatWithholdsFitsIntoOneRegisterAndSoDoTheFlags() {
    assertTrue(Codes.WITHHELD.names().size() <= 16);
    Set<Integer> addresses = new HashSet<>();
    for (Flag flag : Flag.values()) {
      assertTrue(addresses.add(flag.address()) && flag.address() < 16, flag.name());
    }
  }

  @Test
  void textsAreCutBetweenCharactersAndEndWithZeros() {
    Entry text = Entry.text(10, 3, "text", "a text", m -> "ab°C°F");
    Block block = new Block(10, encoded(text));
    assertEquals("ab°C", text.text(block)); // the next sign would need a seventh byte
    assertEquals("", text.text(new Block(10, 0, 0, 0)));
  }

  @SuppressWarnings("NullAway") // this text asks nothing of its moment
  private static int[] encoded(Entry text) {
    return text.encode(null);
  }
}
