package trayward.controller.gpio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.argThat;
import static org.mockito.Mockito.doReturn;
import static org.mockito.Mockito.doThrow;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.spy;
import static org.mockito.Mockito.when;

import com.pi4j.Pi4J;
import com.pi4j.boardinfo.definition.BoardModel;
import com.pi4j.context.Context;
import com.pi4j.exception.InitializeException;
import com.pi4j.io.exception.IOException;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalInput;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalInputProvider;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalOutputProvider;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.port.Contact;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLine;
import trayward.controller.port.OutputLines;

/** The whole set of lines, on Pi4J's own mock provider; failures are made at its edge. */
class PiLinesTest {

  private static final long MS = 1_000_000L;

  private Context context;
  private long now;

  @BeforeEach
  void start() {
    context = mocked();
  }

  private static Context mocked() {
    return Pi4J.newContextBuilder()
        .add(MockDigitalInputProvider.newInstance(), MockDigitalOutputProvider.newInstance())
        .build();
  }

  @AfterEach
  void stop() {
    if (!context.isShutdown()) {
      context.shutdown();
    }
  }

  private PiLines lines(PiWiring wiring) {
    return new PiLines(context, wiring, () -> now);
  }

  private PiLines lines() {
    return lines(PiWiring.standard());
  }

  /** The standard wiring with read-back, every polarity turned round. */
  private static PiWiring turned() {
    Map<PiLine, Wire> wires = new EnumMap<>(PiLine.class);
    for (PiLine function : PiLine.values()) {
      Wire s = function.standard();
      Pull pull = function.output() ? Pull.OFF : Pull.DOWN;
      wires.put(function, new Wire(s.line(), !s.activeLow(), pull, s.debounceMicros()));
    }
    return new PiWiring(wires, 2, 500);
  }

  private static PiWiring withLamp() {
    Map<PiLine, Wire> wires = new EnumMap<>(PiWiring.standard().wires());
    wires.put(PiLine.LAMP, PiLine.LAMP.standard());
    return new PiWiring(wires, 2, 500);
  }

  private DigitalOutput output(PiLine function) {
    return (DigitalOutput) context.registry().get(function.key());
  }

  private void level(PiLine function, DigitalState level) {
    ((MockDigitalInput) context.registry().get(function.key())).mockState(level);
  }

  /** Every contact open, as the resistors hold it. */
  private void rest() {
    for (PiLine function : PiLine.values()) {
      if (!function.output() && context.registry().exists(function.key())) {
        level(function, DigitalState.HIGH);
      }
    }
  }

  @Test
  void everyOutputIsInactiveAtOnceWhateverItsPolarity() {
    lines(turned());
    EnumSet<PiLine> seen = EnumSet.noneOf(PiLine.class);
    for (PiLine function : PiLine.values()) {
      if (function.output()) {
        assertEquals(DigitalState.HIGH, output(function).state(), function.key());
        assertEquals(DigitalState.HIGH, output(function).config().initialState());
        seen.add(function);
      }
    }
    assertEquals(6, seen.size());
  }

  @Test
  void eachOutputDrivesItsOwnLine() {
    OutputLines out = lines(withLamp()).outputLines();
    Map<PiLine, OutputLine> all =
        Map.of(
            PiLine.HEATER_RELAY, out.heaterRelay(),
            PiLine.SAFETY_RELAY, out.safetyRelay(),
            PiLine.WATCHDOG_LINE, out.watchdogLine(),
            PiLine.FAN, out.fan(),
            PiLine.BUZZER, out.buzzer(),
            PiLine.LAMP, out.lamp());
    all.forEach(
        (function, line) -> {
          line.write(true);
          for (PiLine other : all.keySet()) {
            assertEquals(other == function, output(other).state().isHigh(), other.key());
          }
          line.write(false);
          assertTrue(output(function).state().isLow());
        });
  }

  @Test
  void anOutputThatIsActiveLowGoesLow() {
    OutputLines out = lines(turned()).outputLines();
    out.heaterRelay().write(true);
    assertEquals(DigitalState.LOW, output(PiLine.HEATER_RELAY).state());
    out.heaterRelay().write(false);
    assertEquals(DigitalState.HIGH, output(PiLine.HEATER_RELAY).state());
  }

  @Test
  void closingMakesEveryOutputInactiveAndLeavesTheFanAsItWas() {
    PiLines lines = lines(withLamp());
    OutputLines out = lines.outputLines();
    for (OutputLine line :
        new OutputLine[] {
          out.heaterRelay(),
          out.safetyRelay(),
          out.watchdogLine(),
          out.fan(),
          out.buzzer(),
          out.lamp()
        }) {
      line.write(true);
    }
    Map<PiLine, DigitalOutput> held = new EnumMap<>(PiLine.class);
    for (PiLine function : PiLine.values()) {
      if (function.output()) {
        held.put(function, output(function));
      }
    }
    lines.close();
    lines.close();
    held.forEach(
        (function, line) ->
            assertEquals(function == PiLine.FAN, line.state().isHigh(), function.key()));
    assertTrue(context.isShutdown());
  }

  @Test
  void aLampThatIsNotWiredTakesNoLineAndWritingItDoesNothing() {
    OutputLines out = lines().outputLines();
    assertFalse(context.registry().exists(PiLine.LAMP.key()));
    out.lamp().write(true);
    assertTrue(output(PiLine.BUZZER).state().isLow());
  }

  @Test
  void linesGivenBackCannotBeWrittenAndReadAbsent() {
    PiLines lines = lines();
    OutputLines out = lines.outputLines();
    lines.close();
    assertThrows(IllegalStateException.class, () -> out.heaterRelay().write(true));
    assertEquals(LineReadings.ABSENT, lines.read(0));
  }

  @Test
  void contactsThatCloseToGroundAreReadAndOpenOnesAreNot() {
    PiLines lines = lines();
    rest();
    assertEquals(
        new LineReadings(true, false, 0, false, false, false, false), lines.read(0), "all open");
    level(PiLine.AIRFLOW, DigitalState.LOW);
    level(PiLine.STOP_BUTTON, DigitalState.LOW);
    level(PiLine.RESET_BUTTON, DigitalState.LOW);
    level(PiLine.PRESENCE_BUTTON, DigitalState.LOW);
    level(PiLine.PEDAL, DigitalState.LOW);
    assertEquals(new LineReadings(true, true, 0, true, true, true, true), lines.read(0));
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aStartButtonIsReadWhereItIsWiredAndNothingElseIsOne() {
    assertFalse(lines().read(0).startButton());
    assertFalse(context.registry().exists(PiLine.START_BUTTON.key()), "it takes no line");
  }

  @Test
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void aStartButtonThatIsWiredIsReadWhenItGoesDown() {
    Map<PiLine, Wire> wires = new EnumMap<>(PiWiring.standard().wires());
    wires.put(PiLine.START_BUTTON, PiLine.START_BUTTON.standard());
    PiLines lines = lines(new PiWiring(wires, 2, 500));
    rest();
    level(PiLine.START_BUTTON, DigitalState.HIGH);
    assertFalse(lines.read(0).startButton());
    level(PiLine.START_BUTTON, DigitalState.LOW);
    assertTrue(lines.read(0).startButton());
  }

  @Test
  void contactsThatCloseToTheSupplyAreReadTheOtherWayRound() {
    PiLines lines = lines(turned());
    assertEquals(
        new LineReadings(
            true, false, 0, false, false, false, false, false, Contact.OPEN, Contact.OPEN),
        lines.read(0));
    level(PiLine.AIRFLOW, DigitalState.HIGH);
    level(PiLine.STOP_BUTTON, DigitalState.HIGH);
    level(PiLine.SAFETY_CONTACT, DigitalState.HIGH);
    assertEquals(
        new LineReadings(
            true, true, 0, true, false, false, false, false, Contact.OPEN, Contact.CLOSED),
        lines.read(0));
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aBrokenWireOfTheStopCircuitIsAPressedStop() {
    PiLines lines = lines();
    level(PiLine.STOP_BUTTON, DigitalState.LOW);
    assertTrue(lines.read(0).stopCircuitClosed());
    level(PiLine.STOP_BUTTON, DigitalState.HIGH);
    assertFalse(lines.read(0).stopCircuitClosed());
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopPressedAndLetGoBetweenTwoScansIsNotMissed() {
    PiLines lines = lines();
    level(PiLine.STOP_BUTTON, DigitalState.LOW);
    lines.read(0);
    level(PiLine.STOP_BUTTON, DigitalState.HIGH);
    level(PiLine.STOP_BUTTON, DigitalState.LOW);
    assertFalse(lines.read(100 * MS).stopCircuitClosed());
    assertTrue(lines.read(200 * MS).stopCircuitClosed());
  }

  @Test
  void aPedalPressedAndLetGoBetweenTwoScansIsNotMissed() {
    PiLines lines = lines();
    rest();
    lines.read(0);
    level(PiLine.PEDAL, DigitalState.LOW);
    level(PiLine.PEDAL, DigitalState.HIGH);
    assertTrue(lines.read(100 * MS).pedal());
    assertFalse(lines.read(200 * MS).pedal());
  }

  @Test
  void theTachometerCountsPulsesNotEdges() {
    PiLines lines = lines();
    rest();
    for (int i = 0; i < 100; i++) {
      now = 20L * i * MS;
      level(PiLine.TACHOMETER, DigitalState.LOW);
      now += 10 * MS;
      level(PiLine.TACHOMETER, DigitalState.HIGH);
    }
    assertEquals(100, lines.tachometerPulses());
    assertEquals(1500, lines.read(now).fanRpm(), 1e-6);
    assertEquals(0, lines.read(now + 500 * MS).fanRpm());
  }

  @Test
  void debounceAndPullAreSaidForEachInput() {
    lines();
    for (PiLine function : PiLine.values()) {
      if (!function.output() && !function.optional()) {
        DigitalInputConfig config =
            ((DigitalInput) context.registry().get(function.key())).config();
        assertEquals(function.standard().debounceMicros(), config.debounce(), function.key());
        assertEquals(Pull.UP.resistance(), config.pull(), function.key());
      }
    }
  }

  @Test
  void aReadThatFailsIsAbsentAndNoException() {
    Context failing = spy(context);
    DigitalInput airflow = mock(DigitalInput.class);
    doReturn(airflow).when(failing).create(argThat((DigitalInputConfig c) -> isAirflow(c)));
    try (PiLines lines = new PiLines(failing, PiWiring.standard(), () -> now)) {
      when(airflow.state()).thenThrow(new IllegalStateException("EIO"));
      assertEquals(LineReadings.ABSENT, lines.read(0));
    }
  }

  @Test
  void aLineWithoutALevelIsAbsent() {
    Context failing = spy(context);
    DigitalInput airflow = mock(DigitalInput.class);
    doReturn(airflow).when(failing).create(argThat((DigitalInputConfig c) -> isAirflow(c)));
    try (PiLines lines = new PiLines(failing, PiWiring.standard(), () -> now)) {
      when(airflow.state()).thenReturn(DigitalState.UNKNOWN);
      assertEquals(LineReadings.ABSENT, lines.read(0));
      when(airflow.state()).thenReturn(DigitalState.LOW);
      assertTrue(lines.read(0).airflow(), "and is back when its level is");
    }
  }

  private static boolean isAirflow(DigitalInputConfig config) {
    return config != null && config.id().equals(PiLine.AIRFLOW.key());
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aWriteThatFailsThrowsAndClosingStillReachesTheOtherOutputs() {
    Context failing = spy(context);
    DigitalOutput heater = mock(DigitalOutput.class);
    doReturn(heater)
        .when(failing)
        .create(
            argThat(
                (DigitalOutputConfig c) -> c != null && c.id().equals(PiLine.HEATER_RELAY.key())));
    PiLines lines = new PiLines(failing, PiWiring.standard(), () -> now);
    OutputLines out = lines.outputLines();
    out.safetyRelay().write(true);
    DigitalOutput safety = output(PiLine.SAFETY_RELAY);
    when(heater.state(any(DigitalState.class))).thenThrow(new IOException("EIO"));
    assertThrows(RuntimeException.class, () -> out.heaterRelay().write(true));
    lines.close();
    assertTrue(safety.state().isLow());
  }

  private String refusal(RuntimeException thrown) {
    context = mocked();
    Context held = spy(context);
    doThrow(thrown)
        .when(held)
        .create(argThat((DigitalInputConfig c) -> c != null && c.id().equals(PiLine.PEDAL.key())));
    return String.valueOf(
        assertThrows(LineUnavailable.class, () -> new PiLines(held, PiWiring.standard(), () -> now))
            .getMessage());
  }

  /** The words of the native library are those seen on a real character device. */
  @Test
  void aLineHeldElsewhereIsToldByNumberAndNameAndTheOthersAreGivenBack() {
    RuntimeException busy =
        new RuntimeException(
            "c_gpiod_line_request_both_edges_events_flags failed: -1 (Device or resource busy)");
    assertEquals(
        "line 16 (pedal) is held by another program",
        refusal(new InitializeException("Failed to initialize input pedal", busy)));
    assertTrue(context.isShutdown());
  }

  @Test
  void aLineThatIsNotThereOrNotPermittedIsToldSo() {
    assertEquals(
        "line 16 (pedal) may not be used by this user",
        refusal(new InitializeException(new RuntimeException("open failed (Permission denied)"))));
    assertEquals(
        "line 16 (pedal) is not there or cannot be used so",
        refusal(new IllegalStateException("c_gpiod_chip_get_line failed! (Invalid argument)")));
  }

  @Test
  void aComputerThatIsNoPiIsToldSoInOneSentence() {
    assumeTrue(context.boardInfo().getBoardModel() == BoardModel.UNKNOWN);
    LineUnavailable e =
        assertThrows(LineUnavailable.class, () -> PiLines.open(PiWiring.standard(), () -> now));
    assertEquals("this computer is not known as a Pi, so it has no such lines", e.getMessage());
  }
}
