package trayward.controller.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.port.Contact;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLines;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;

/** The bench rig's files, by the contract. */
class RigInputsTest {

  private static final long SECOND = 1_000_000_000L;

  @TempDir private Path folder;

  private RigInputs inputs() {
    return new RigInputs(new RigFolder(folder), (role, now) -> RawReading.frame(20, now));
  }

  private void line(String name, String value) throws IOException {
    Files.writeString(folder.resolve(name), value + "\n");
  }

  @Test
  void withoutATickEverythingIsAbsentAndStopCountsAsPressed() {
    RigInputs inputs = inputs();
    assertEquals(LineReadings.ABSENT, inputs.read(0));
    assertFalse(LineReadings.ABSENT.stopCircuitClosed());
    assertEquals(RawReading.Kind.ABSENT, inputs.latest(ProbeRole.BATH, 0).kind());
  }

  @Test
  void linesAreReadAsTheContractSays() throws IOException {
    line("tick", "1");
    line("airflow", "1");
    line("fan_rpm", "1487.5");
    line("stop_button", "1");
    line("pedal", "1");
    LineReadings read = inputs().read(0);
    assertEquals(new LineReadings(true, true, 1487.5, true, false, false, true), read);
  }

  @Test
  void readBackOfTheContactsIsReadWhereItsFilesAre() throws IOException {
    line("tick", "1");
    assertEquals(Contact.NOT_WIRED, inputs().read(0).heaterContact());
    line("heater_contact", "1");
    line("safety_contact", "0");
    assertEquals(Contact.CLOSED, inputs().read(0).heaterContact());
    assertEquals(Contact.OPEN, inputs().read(0).safetyContact());
    line("safety_contact", "half");
    assertEquals(Contact.NOT_WIRED, inputs().read(0).safetyContact());
  }

  @Test
  void aMissingStopFileIsAPressedStopAndOtherMissingFilesReadAsZero() throws IOException {
    line("tick", "1");
    assertEquals(new LineReadings(true, false, 0, false, false, false, false), inputs().read(0));
  }

  @Test
  void halfWrittenOrForeignTextReadsAsZero() throws IOException {
    line("tick", "1");
    line("airflow", "yes");
    line("fan_rpm", "NaN");
    line("stop_button", "");
    assertEquals(new LineReadings(true, false, 0, false, false, false, false), inputs().read(0));
  }

  @Test
  void aTickThatStandsStillForTwoSecondsMakesEveryInputAbsentAndANewOneBringsThemBack()
      throws IOException {
    line("tick", "5");
    line("airflow", "1");
    RigInputs inputs = inputs();
    assertTrue(inputs.read(0).airflow());
    assertTrue(inputs.read(2 * SECOND - 1).airflow());
    assertEquals(LineReadings.ABSENT, inputs.read(2 * SECOND));
    assertEquals(RawReading.Kind.ABSENT, inputs.latest(ProbeRole.BATH, 2 * SECOND).kind());
    line("tick", "6");
    assertTrue(inputs.read(3 * SECOND).airflow());
    assertEquals(RawReading.Kind.FRAME, inputs.latest(ProbeRole.BATH, 3 * SECOND).kind());
  }

  @Test
  void outputsStartAsZeroAndAreReplacedWhole() throws IOException {
    OutputLines outputs = new RigFolder(folder).outputs();
    for (String name :
        new String[] {"heater_relay", "safety_relay", "watchdog_line", "fan", "buzzer", "lamp"}) {
      assertEquals("0\n", Files.readString(folder.resolve(name)));
    }
    outputs.fan().write(true);
    assertEquals("1\n", Files.readString(folder.resolve("fan")));
    outputs.fan().write(false);
    assertEquals("0\n", Files.readString(folder.resolve("fan")));
  }
}
