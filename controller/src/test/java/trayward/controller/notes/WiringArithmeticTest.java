package trayward.controller.notes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The small sums of the drawings, done again: Ohm's law on the values that are drawn. */
class WiringArithmeticTest {

  private static void says(String file, String words) throws IOException {
    String text = Files.readString(Path.of("..", "hardware-notes", file));
    assertTrue(text.contains(words), file + " does not say: " + words);
  }

  @Test
  void aPullDownOfFourPointSevenWinsAgainstAPullUpInsideTheChip() throws Exception {
    double gateV = 3.3 * 1.05 * 4.7 / (4.7 + 40); // 40 kΩ: the strongest pull-up, from memory
    assertTrue(gateV < 0.5, "lowest threshold asked for: " + gateV);
    assertEquals(0.35, 3.3 * 4.7 / (4.7 + 40), 0.005);
    says("wiring.md", "= 0.35 V");
    says("relay-driver.svg", "= 0.35 V");
  }

  @Test
  void theLineStillTurnsTheGateFullyOnThroughItsResistor() {
    double gateV = 3.3 * 0.95 * 4700 / (4700 + 220);
    assertTrue(gateV > 2.5, "gate at which the transistor is specified: " + gateV);
  }

  @Test
  void biasKeepsAnIdlePairAboveTwoTenthsOfAVolt() throws Exception {
    double from3 = 3.3 * 60 / (60 + 2 * 390); // TIA-485-A: 200 mV; two terminations of 120 Ω
    double from5 = 5.0 * 60 / (60 + 2 * 560);
    assertTrue(from3 > 0.2 && from5 > 0.2);
    assertEquals(0.24, from3, 0.005);
    assertEquals(0.25, from5, 0.005);
    says("rs485.svg", "= 0.24 V");
    says("wiring.md", "390 Ω from 3.3 V give 0.24 V, 560 Ω from 5 V 0.25 V");
  }

  @Test
  void aClosedContactIsWettedAndReadsLowAndAWrongFanStaysWithinTheClamp() throws Exception {
    assertEquals(1.5, 3.3 / 2.2, 0.005);
    says("airflow-switch.svg", "= 1.5 mA");
    assertEquals(8.4, (12 - 3.6) / 1.0, 0.001);
    says("tachometer.svg", "= 8 mA");
    assertEquals(2.8e3, 1 / (2 * Math.PI * (4700 + 1000) * 10e-9), 50);
    says("tachometer.svg", "pass 2.8 kHz");
    // 20000 revolutions a minute, the fastest fan the program accepts, two pulses each.
    double halfPulseS = 0.5 / (20_000 / 60.0 * 2);
    double riseS = 3 * (4700 + 1000) * 10e-9; // three time constants: 95 %
    assertTrue(riseS < halfPulseS, riseS + " of " + halfPulseS);
  }
}
