package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.port.Contact;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLine;
import trayward.controller.port.OutputLines;
import trayward.controller.scan.BarredOutputs.Doing;
import trayward.controller.scan.BarredOutputs.Output;

/** Outputs one at a time, and never heat. */
class BarredOutputsTest {

  private static final long TENTH = 100_000_000L;
  private static final LineReadings AT_REST = inputs(true, Contact.OPEN, Contact.OPEN);

  /** A line that remembers, and can be broken. */
  private static final class Line implements OutputLine {
    boolean on = true; // as a program before may have left it
    int changes;
    boolean broken;

    @Override
    public void write(boolean active) {
      if (broken) {
        throw new IllegalStateException("the line is broken");
      }
      changes += active == on ? 0 : 1;
      on = active;
    }
  }

  private final Line heater = new Line();
  private final Line safety = new Line();
  private final Line watchdog = new Line();
  private final Line fan = new Line();
  private final Line buzzer = new Line();
  private final Line lamp = new Line();
  private long now = 77;
  private final BarredOutputs outputs =
      new BarredOutputs(new OutputLines(heater, safety, watchdog, fan, buzzer, lamp), now);

  private static LineReadings inputs(boolean stopWhole, Contact heater, Contact safety) {
    return new LineReadings(true, false, 0, stopWhole, false, false, false, false, heater, safety);
  }

  private Doing step(Output want, LineReadings in) {
    now += TENTH;
    return outputs.step(Optional.of(want), in, now);
  }

  private Doing none() {
    now += TENTH;
    return outputs.step(Optional.empty(), AT_REST, now);
  }

  private List<Doing> steps(Output want, int count) {
    List<Doing> all = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      all.add(step(want, AT_REST));
    }
    return all;
  }

  private Line line(Output output) {
    return switch (output) {
      case FAN -> fan;
      case BUZZER -> buzzer;
      case LAMP -> lamp;
      case WATCHDOG_LINE -> watchdog;
      case SAFETY_RELAY -> safety;
      case HEATER_RELAY -> heater;
    };
  }

  private boolean allOff() {
    return !(heater.on || safety.on || watchdog.on || fan.on || buzzer.on || lamp.on);
  }

  @Test
  void atFirstEverythingIsOffAndStaysSoWhereNothingIsWanted() {
    assertTrue(allOff());
    assertEquals(Doing.OFF, none());
    assertTrue(allOff());
  }

  @ParameterizedTest
  @EnumSource(Output.class)
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void eachOutputComesOnAloneAndGoesOffAgain(Output output) {
    List<Doing> doings = steps(output, 20 + 5);
    assertEquals(Doing.ON, doings.get(24));
    for (Output other : Output.values()) {
      boolean holdsIn = other == Output.WATCHDOG_LINE && output == Output.SAFETY_RELAY;
      if (other == output && other != Output.WATCHDOG_LINE) {
        assertTrue(line(other).on);
      } else if (other != output && !holdsIn) {
        assertFalse(line(other).on, other + " beside " + output);
      }
    }
    none();
    assertFalse(heater.on || safety.on || fan.on || buzzer.on || lamp.on);
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void aRelayIsClosedForFiveSecondsAtTheMostAndThenOnlyIfItIsWantedAnew() {
    for (Output relay : List.of(Output.HEATER_RELAY, Output.SAFETY_RELAY)) {
      List<Doing> doings = steps(relay, 20 + 51 + 1000);
      assertEquals(51, doings.stream().filter(d -> d == Doing.ON).count());
      assertEquals(Doing.OVER, doings.get(doings.size() - 1));
      assertFalse(line(relay).on);
      none();
      assertEquals(Doing.ON, step(relay, AT_REST), "its own contact was open meanwhile");
      none();
    }
  }

  @Test
  void aProgramThatStoodStillOpensTheRelayInItsNextStep() {
    steps(Output.HEATER_RELAY, 25);
    assertTrue(heater.on);
    now += 3600 * 10 * TENTH;
    assertEquals(Doing.OVER, step(Output.HEATER_RELAY, AT_REST));
    assertFalse(heater.on);
  }

  /** The hardware holds the safety relay for up to a second after the last pulse (SR-18). */
  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void oneRelayWaitsTwoSecondsForTheOtherAndForTheLastPulse() {
    for (Output before : List.of(Output.SAFETY_RELAY, Output.WATCHDOG_LINE)) {
      steps(before, 25);
      List<Doing> doings = steps(Output.HEATER_RELAY, 20);
      assertEquals(19, doings.stream().filter(d -> d == Doing.RESTING).count(), "after " + before);
      assertEquals(Doing.ON, doings.get(19));
      none();
    }
    steps(Output.HEATER_RELAY, 1);
    List<Doing> back = steps(Output.SAFETY_RELAY, 20);
    assertEquals(19, back.stream().filter(d -> d == Doing.RESTING).count());
    assertEquals(Doing.ON, back.get(19));
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void theWatchdogLineIsSilentButForItselfAndTheSafetyRelay() {
    for (Output output : List.of(Output.FAN, Output.BUZZER, Output.HEATER_RELAY)) {
      int before = watchdog.changes;
      steps(output, 50);
      assertEquals(before, watchdog.changes, output.name());
    }
    none();
    for (Output output : List.of(Output.WATCHDOG_LINE, Output.SAFETY_RELAY)) {
      steps(output, 20);
      int before = watchdog.changes;
      steps(output, 10);
      assertEquals(before + 10, watchdog.changes, output.name());
      none();
    }
    int before = watchdog.changes;
    steps(Output.SAFETY_RELAY, 200);
    int held = watchdog.changes - before;
    assertEquals(51, held, "silent once the relay had its time");
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void theStopCircuitOpensARelayInThatStepAndReleasingItClosesNothing() {
    for (Output relay : List.of(Output.SAFETY_RELAY, Output.HEATER_RELAY)) {
      steps(relay, 25);
      assertTrue(line(relay).on);
      assertEquals(Doing.STOPPED, step(relay, inputs(false, Contact.OPEN, Contact.OPEN)));
      assertFalse(line(relay).on);
      assertEquals(Doing.OVER, step(relay, AT_REST));
      assertFalse(line(relay).on);
      none();
    }
    assertEquals(Doing.STOPPED, step(Output.HEATER_RELAY, LineReadings.ABSENT), "no inputs");
  }

  @Test
  @Verifies(value = "SR-14", side = Side.ALLOWS)
  void fanBuzzerAndPulsesCanBeTriedBeforeAStopIsWired() {
    LineReadings stopped = inputs(false, Contact.NOT_WIRED, Contact.NOT_WIRED);
    for (Output output : List.of(Output.FAN, Output.BUZZER, Output.LAMP, Output.WATCHDOG_LINE)) {
      assertEquals(Doing.ON, step(output, stopped));
    }
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void aContactThatReadsAsClosedKeepsTheOtherRelayOpen() {
    steps(Output.FAN, 30);
    LineReadings welded = inputs(true, Contact.OPEN, Contact.CLOSED);
    assertEquals(Doing.OTHER_CONTACT_CLOSED, step(Output.HEATER_RELAY, welded));
    assertFalse(heater.on);
    none();
    steps(Output.HEATER_RELAY, 3);
    assertTrue(heater.on);
    assertEquals(Doing.OTHER_CONTACT_CLOSED, step(Output.HEATER_RELAY, welded), "while it is on");
    assertFalse(heater.on);
    none();
    steps(Output.FAN, 30);
    LineReadings heaterWelded = inputs(true, Contact.CLOSED, Contact.OPEN);
    assertEquals(Doing.OTHER_CONTACT_CLOSED, step(Output.SAFETY_RELAY, heaterWelded));
    assertFalse(safety.on);
  }

  /** Seeded random wishes, inputs and pauses: never two relays, never heat. */
  @Test
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  void whateverIsWantedInWhateverOrderTheTwoRelaysAreNeverClosedWithinTwoSeconds() {
    Random random = new Random(26);
    long heaterLast = now;
    long safetyLast = now;
    int heaterOn = 0;
    int safetyOn = 0;
    for (int i = 0; i < 200_000; i++) {
      int pulses = watchdog.changes;
      Output relay = i / 37 % 2 == 0 ? Output.SAFETY_RELAY : Output.HEATER_RELAY;
      Output output =
          random.nextInt(40) < 36
              ? relay
              : random.nextBoolean() ? Output.WATCHDOG_LINE : Output.FAN;
      Optional<Output> want = random.nextInt(12) == 0 ? Optional.empty() : Optional.of(output);
      Contact[] contacts = Contact.values();
      LineReadings in =
          inputs(
              random.nextInt(50) != 0,
              contacts[random.nextInt(30) == 0 ? 2 : random.nextInt(2)],
              contacts[random.nextInt(30) == 0 ? 2 : random.nextInt(2)]);
      now += random.nextInt(20) == 0 ? 30 * TENTH : TENTH;
      outputs.step(want, in, now);
      assertFalse(heater.on && safety.on);
      if (heater.on) {
        heaterOn++;
        heaterLast = now;
        assertTrue(now - safetyLast >= BarredOutputs.REST_NANOS);
        assertEquals(pulses, watchdog.changes);
      }
      if (safety.on) {
        safetyOn++;
        assertTrue(now - heaterLast >= BarredOutputs.REST_NANOS);
      }
      if (safety.on || watchdog.changes != pulses) {
        safetyLast = now;
      }
    }
    assertTrue(heaterOn > 1000 && safetyOn > 1000, heaterOn + " " + safetyOn);
  }

  @Test
  void closingSwitchesEverythingOffForGood() {
    steps(Output.SAFETY_RELAY, 24);
    outputs.close();
    assertTrue(allOff());
    assertEquals(Doing.OFF, step(Output.FAN, AT_REST));
    assertTrue(allOff());
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void anOutputThatCannotBeWrittenEndsItWithAllTheOthersOff() {
    for (int fails = 0; fails < 6; fails++) {
      Line[] all = {new Line(), new Line(), new Line(), new Line(), new Line(), new Line()};
      OutputLines lines = new OutputLines(all[0], all[1], all[2], all[3], all[4], all[5]);
      BarredOutputs some = new BarredOutputs(lines, 0);
      long late = 30 * TENTH;
      assertEquals(Doing.ON, some.step(Optional.of(Output.SAFETY_RELAY), AT_REST, late));
      assertTrue(all[1].on && all[2].on);
      all[fails].broken = true;
      assertThrows(
          IllegalStateException.class,
          () -> some.step(Optional.of(Output.SAFETY_RELAY), AT_REST, late + TENTH));
      for (int other = 0; other < 6; other++) {
        assertFalse(other != fails && all[other].on, other + " where " + fails + " is broken");
      }
      all[fails].broken = false;
      assertEquals(Doing.OFF, some.step(Optional.of(Output.SAFETY_RELAY), AT_REST, late + TENTH));
      some.close();
      for (Line each : all) {
        assertFalse(each.on, "it has ended");
      }
    }
  }

  @Test
  void aLineThatCannotBeSwitchedOffIsToldAtTheEndToo() {
    steps(Output.FAN, 1);
    heater.broken = true;
    assertThrows(IllegalStateException.class, outputs::close);
    assertFalse(fan.on);
  }
}
