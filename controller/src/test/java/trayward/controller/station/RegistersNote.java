package trayward.controller.station;

import java.util.List;
import trayward.controller.event.AlarmCause;

/** The note of registers, printed from the tables in code. */
final class RegistersNote {

  private RegistersNote() {}

  static String printed() {
    StringBuilder out = new StringBuilder();
    out.append(
        """
        # Registers

        Printed from the tables in code (`trayward.controller.station`). The controller is a server of the open Modbus
        protocol, unit 1, on a serial line or on loopback TCP (`[link]`): functions 01, 02, 03, 04, 05, 06, 15, 16 and 43/14.
        Each read is served from one moment. Two registers have their high word first. A broadcast is not acted on.

        Low voltage only: the line carries data. It needs no earth of the mains, and gives none.

        ## Input registers

        """);
    inputs(out);
    out.append(
        """

        Not valid is 0x8000 in one signed register, 0x80000000 in two, 65535 and 4294967295 in unsigned ones. Registers
        within a block that have no line above read as 0; others are refused (exception 02).

        ## Discrete inputs

        | address | 1 means |
        |---|---|
        """);
    for (Flag flag : Flag.values()) {
      out.append("| ").append(flag.address()).append(" | ").append(flag.meaning()).append(" |\n");
    }
    out.append(
        """

        ## Coils

        Each acts when 1 is written and reads as 0. None of them needs a token, and none can start heat.

        | address | asks |
        |---|---|
        """);
    for (Coil coil : Coil.values()) {
      out.append("| ").append(coil.address()).append(" | ");
      out.append(coil.code().meaning()).append(" |\n");
    }
    commands(out);
    codes(out);
    return out.toString();
  }

  private static void inputs(StringBuilder out) {
    out.append("| address | name | form | unit | meaning |\n|---|---|---|---|---|\n");
    for (Entry entry : Dictionary.INPUTS) {
      boolean laterSlot = entry.address() >= EventRegisters.BASE + EventRegisters.EACH;
      if (laterSlot) {
        continue; // each slot is as the first
      }
      out.append("| ").append(entry.address()).append(" | ").append(entry.name()).append(" | ");
      out.append(entry.form().description());
      if (entry.form() == Form.TEXT) {
        out.append(", ").append(entry.words()).append(" registers");
      }
      out.append(" | ").append(entry.unit()).append(" | ").append(entry.meaning()).append(" |\n");
    }
    out.append("\nThere are ").append(EventRegisters.SLOTS).append(" slots of ");
    out.append(EventRegisters.EACH).append(" registers, from ").append(EventRegisters.BASE);
    out.append(" on, each as the first: event n stands in slot n modulo ");
    out.append(EventRegisters.SLOTS).append(".\n");
  }

  private static void commands(StringBuilder out) {
    out.append(
        """

        ## Holding registers

        | address | meaning |
        |---|---|
        | 0 | token: a number other than the last one |
        | 1 | command code |
        | 2 | argument |
        | 3 | heartbeat of the host: a number that changes (SR-16) |
        | 4 | more_1: a second argument |
        | 5 | more_2: a third |

        Registers 0, 1 and 2 are written together, else the write is refused (exception 03). A new token acts once; while its
        result is WAITING another command is refused as busy (exception 06), but for a stop. Arguments in 4 and 5 are written
        with the command or before it.

        | code | command | argument |
        |---|---|---|
        """);
    for (CommandCode code : CommandCode.values()) {
      out.append("| ").append(code.code()).append(" | ").append(code.meaning());
      out.append(" | ").append(code.argument()).append(" |\n");
    }
  }

  private static void codes(StringBuilder out) {
    out.append("\n## Numbers and names\n\n");
    list(out, "Classes of a reading", Codes.READING.names());
    list(out, "Withheld, bit numbers", Codes.WITHHELD.names());
    list(out, "States of an alarm", Codes.ALARM_STATE.names());
    list(out, "Kinds of events", Codes.EVENT.names());
    out.append("- Causes (first_out, alarms): ");
    StringBuilder causes = new StringBuilder();
    for (AlarmCause cause : AlarmCause.all()) {
      causes.append(causes.length() == 0 ? "" : ", ").append(cause.name()).append(' ');
      causes.append(Codes.cause(cause));
    }
    out.append(causes).append(".\n");
  }

  private static void list(StringBuilder out, String title, List<? extends Enum<?>> names) {
    out.append("- ").append(title).append(": ");
    for (int i = 0; i < names.size(); i++) {
      out.append(i == 0 ? "" : ", ").append(names.get(i).name()).append(' ').append(i);
    }
    out.append(".\n");
  }
}
