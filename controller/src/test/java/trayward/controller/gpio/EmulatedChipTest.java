package trayward.controller.gpio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/**
 * The lines of a Pi over a real character device: a kernel in a software emulation, with its own
 * simulation of a chip. It proves the way through Pi4J, its native part and the kernel; not the
 * multiplexing of pins, the timing or the levels at release of a real board.
 */
@Tag("emulated")
class EmulatedChipTest {

  private static EmulatedChip chip;

  @BeforeAll
  static void boot() throws IOException, InterruptedException {
    assumeTrue(
        Boolean.getBoolean("trayward.emulated") || EmulatedChip.available(),
        "qemu-system-aarch64 is not here");
    chip = EmulatedChip.run();
    chip.facts().forEach((key, value) -> System.out.println("emulated: " + key + " = " + value));
  }

  private static void is(String expected, String key) {
    assertEquals(expected, chip.fact(key), key);
  }

  private static double rpm(String key) {
    String fact = chip.fact(key);
    return Double.parseDouble(fact.substring(fact.indexOf("rpm=") + 4));
  }

  private static long number(String key) {
    return Long.parseLong(chip.fact(key));
  }

  @Test
  void aComputerThatIsNoPiIsRefusedInOneSentence() throws IOException {
    is("2", "no_pi.exit");
    assertEquals("this computer is not known as a Pi, so it has no such lines", chip.said("no_pi"));
  }

  @Test
  void aPiWithoutAChipIsRefusedInOneSentence() throws IOException {
    is("2", "no_chip.exit");
    assertEquals(
        "this computer has no chip with lines (a /dev/gpiochip whose label has pinctrl)",
        chip.said("no_chip"));
  }

  @Test
  void outputsAreInactiveAtOnceAndEachLightsItsOwnLamp() {
    is("taken", "probe.taken");
    is("", "probe.lamps_at_once");
    for (PiLine function : PiLine.values()) {
      if (function.output()) {
        is(function.key(), "probe.on." + function.key());
      }
    }
    is("", "probe.lamps_after");
  }

  @Test
  void everyInputIsPulledUpByTheChip() {
    is("pull-up", "probe.pulls");
  }

  @Test
  void openContactsReadAsNoAirStopPressedNobodyThere() {
    is("present rpm=0", "contacts.rest");
  }

  @Test
  void airflowAndStopAreReadAsTheyClose() {
    is("present airflow stop_closed rpm=0", "contacts.air_and_stop");
    is("present stop_closed rpm=0", "contacts.air_gone");
    is("present stop_closed reset presence rpm=0", "contacts.both_buttons");
  }

  @Test
  void aSparkOnThePedalIsNoPress() {
    assumeTrue(
        number("contacts.spark_us") < PiLine.PEDAL.standard().debounceMicros() / 2,
        "a busy computer held the contact down for longer than a spark");
    is("present stop_closed rpm=0", "contacts.pedal_spark");
  }

  @Test
  void thePedalIsCaughtBetweenScans() {
    is("present stop_closed pedal rpm=0", "contacts.pedal_60_ms");
    is("present stop_closed rpm=0", "contacts.pedal_told_once");
    is("present stop_closed pedal rpm=0", "contacts.pedal_down");
    is("present stop_closed pedal rpm=0", "contacts.pedal_still_down");
    is("present stop_closed rpm=0", "contacts.pedal_up");
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopBetweenTwoScansIsCaught() {
    is("present rpm=0", "contacts.stop_between_scans");
    is("present stop_closed rpm=0", "contacts.stop_whole_again");
  }

  @Test
  void fourHundredPulsesAreAllCounted() {
    is("400", "pulses.counted_of_400");
  }

  @Test
  void theSpeedReadIsTheSpeedDriven() {
    assumeTrue(
        chip.fact("pulses.paced_counted_of_400").equals("400"), "a busy computer lost pulses");
    double driven = Double.parseDouble(chip.fact("pulses.rpm_driven"));
    assertEquals(driven, rpm("pulses.rpm_read"), 0.15 * driven);
  }

  @Test
  void aFanThatStandsReadsNought() {
    is("present stop_closed rpm=0", "pulses.rpm_standing");
  }

  @Test
  void aSecondProgramIsRefusedInOneSentenceAndTheFirstGoesOn() throws IOException {
    is("ended", "second.taken");
    is("2", "second.exit");
    assertEquals("line 17 (heater relay) is held by another program", chip.said("second"));
    assertTrue(chip.fact("probe.after_second").startsWith("present stop_closed"));
  }

  /** What remains lit is the emulated kernel's doing, and is told in the log, not judged. */
  @Test
  void afterAKillTheLinesCanBeTakenAgainAndAreInactiveAtOnce() {
    is("137", "killed.exit");
    is("heater_relay safety_relay watchdog_line fan buzzer", "killed.lamps_before");
    is("taken", "after_kill.taken");
    is("", "after_kill.lamps");
    is("present rpm=0", "after_kill.read");
  }

  @Test
  void anOrderlyEndLeavesNothingLitButPerhapsTheFan() {
    is("0", "closed.exit");
    assertTrue(
        chip.fact("closed.lamps_after").isEmpty() || chip.fact("closed.lamps_after").equals("fan"));
  }

  @Test
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  void theWholeControllerHeatsAfterProvingPurgeAndContactTest() {
    is("running", "heat.running");
    is("started", "heat.start");
    assertTrue(number("heat.fan_on_ms") >= 0);
    assertTrue(number("heat.both_closed_ms") > 0);
    is("heater_relay safety_relay", "heat.closed_alone_before");
    assertTrue(chip.fact("heat.state").startsWith("HEATING"), chip.fact("heat.state"));
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void theWatchdogLineIsSeenToChangeFromOutside() {
    assertTrue(number("heat.ten_watchdog_edges_ms") > 0);
  }

  @Test
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void airThatIsLostOpensTheHeaterRelayAndTheFanRunsOn() {
    assertTrue(number("heat.off_after_air_ms") >= 0);
    assertTrue(
        chip.fact("heat.state_after").startsWith("LOCKOUT AIR_LOST"),
        chip.fact("heat.state_after"));
    is("false", "heat.safety_after");
    is("0", "heat.exit");
  }

  @Test
  void theFinishedProgramRunsAndASecondOneIsRefusedInOneLine() throws IOException {
    assumeTrue(chip.facts().containsKey("program.says"), "trayward.jar has not been built");
    assertTrue(chip.fact("program.says").startsWith("Trayward is at http://127.0.0.1:"));
    is("2", "program_second.exit");
    assertEquals(
        "io.kind = \"pi\": line 17 (heater relay) is held by another program",
        chip.said("program_second"));
    assertFalse(chip.fact("program.lamps").contains("relay"), chip.fact("program.lamps"));
    is("", "program.lamps_after");
    assertEquals("", chip.said("program"));
  }
}
