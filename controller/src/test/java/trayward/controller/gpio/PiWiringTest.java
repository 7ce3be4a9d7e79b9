package trayward.controller.gpio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The default lines. What stands on which line of the header, and which lines the chip pulls low at
 * power-up (9 to 27), is from memory of the chip's manual.
 */
class PiWiringTest {

  /** Identification, I2C, 1-Wire, SPI and the serial port. */
  private static final Set<Integer> OTHERS = Set.of(0, 1, 2, 3, 4, 7, 8, 9, 10, 11, 14, 15);

  @Test
  void theDefaultLinesAreOnTheHeaderEachOnceAndOnNoBus() {
    Set<Integer> seen = new HashSet<>();
    for (PiLine function : PiLine.values()) {
      Wire wire = function.standard();
      assertTrue(seen.add(wire.line()), function.key());
      assertTrue(wire.line() <= 27, function.key());
      assertFalse(OTHERS.contains(wire.line()), function.key());
    }
  }

  @Test
  void aRelayIsOpenFromPowerUpOnTheDefaultLines() {
    for (PiLine function : PiLine.values()) {
      if (function.output()) {
        Wire wire = function.standard();
        assertFalse(wire.activeLow(), function.key());
        assertTrue(wire.line() >= 9 && wire.line() <= 27, function.key());
      }
    }
  }

  @Test
  void noDefaultInputReadsActiveWithABrokenWire() {
    for (PiLine function : PiLine.values()) {
      assertFalse(function.standard().brokenReadsActive(), function.key());
      assertTrue(function.output() || function.standard().pull() != Pull.OFF, function.key());
    }
  }

  @Test
  void theTachometerHasNoDebounce() {
    assertEquals(0, PiLine.TACHOMETER.standard().debounceMicros());
    assertFalse(PiLine.TACHOMETER.debounced());
  }

  @Test
  void readBackIsLeftOutUnlessWiredAndNothingElseMayBe() {
    PiWiring standard = PiWiring.standard();
    assertTrue(standard.wire(PiLine.HEATER_CONTACT).isEmpty());
    assertTrue(standard.wire(PiLine.SAFETY_CONTACT).isEmpty());
    Map<PiLine, Wire> lacking = new EnumMap<>(standard.wires());
    lacking.remove(PiLine.STOP_BUTTON);
    assertThrows(IllegalArgumentException.class, () -> new PiWiring(lacking, 2, 500));
  }

  @Test
  void twoFunctionsOnOneLineAreNoWiring() {
    Map<PiLine, Wire> wires = new EnumMap<>(PiWiring.standard().wires());
    wires.put(PiLine.FAN, PiLine.HEATER_RELAY.standard());
    String message =
        assertThrows(IllegalArgumentException.class, () -> new PiWiring(wires, 2, 500))
            .getMessage();
    assertEquals("heater relay and fan", message);
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 58})
  void aLineOffTheChipIsNoLine(int line) {
    assertThrows(IllegalArgumentException.class, () -> new Wire(line, false, Pull.OFF, 0));
  }

  @ParameterizedTest
  @CsvSource({"0,500", "13,500", "2,199", "2,1001"})
  void aTachometerBeyondItsRangesIsNone(int pulses, int silenceMs) {
    Map<PiLine, Wire> wires = PiWiring.standard().wires();
    assertThrows(IllegalArgumentException.class, () -> new PiWiring(wires, pulses, silenceMs));
  }

  @Test
  void keysAreFoundAgain() {
    for (PiLine function : PiLine.values()) {
      assertEquals(function, PiLine.of(function.key()).orElseThrow());
    }
    assertTrue(PiLine.of("kettle").isEmpty());
  }
}
