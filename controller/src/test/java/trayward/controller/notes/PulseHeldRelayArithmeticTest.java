package trayward.controller.notes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/**
 * The numbers of hardware-notes/pulse-held-relay.md: the circuit as drawn at every corner of its
 * tolerances. What is asked of it is SR-18's and the scan's: an edge every 100 ms, one 300 ms late.
 */
class PulseHeldRelayArithmeticTest {

  private static final double EDGE_S = 0.1;
  private static final double LATE_S = 0.3;

  /** Longest release of a small relay with a diode across its coil, s: common practice. */
  private static final double RELEASE_S = 0.05;

  private static final List<PulsePump> CORNERS = corners();

  private static double pick(int corner, int bit, double low, double high) {
    return (corner >> bit & 1) == 0 ? low : high;
  }

  private static List<PulsePump> corners() {
    List<PulsePump> all = new ArrayList<>();
    PulsePump n = PulsePump.NOMINAL;
    for (int c = 0; c < 1 << 9; c++) {
      all.add(
          new PulsePump(
              pick(c, 0, 4.75, 5.25),
              pick(c, 1, 0.15, 0.5),
              n.couplingAF() * pick(c, 2, 0.8, 1.2),
              n.couplingBF() * pick(c, 3, 0.8, 1.2),
              n.reservoirF() * pick(c, 4, 0.8, 1.2),
              n.bleedOhm() * pick(c, 5, 0.99, 1.01),
              n.gateOhm(),
              pick(c, 6, 0, 1e-6),
              pick(c, 7, 0.2e-6, 2e-6),
              n.thresholdV() * pick(c, 8, 0.97, 1.03)));
    }
    return all;
  }

  private static double least(ToDoubleFunction<PulsePump> of) {
    return CORNERS.stream().mapToDouble(of).min().orElseThrow();
  }

  private static double most(ToDoubleFunction<PulsePump> of) {
    return CORNERS.stream().mapToDouble(of).max().orElseThrow();
  }

  private static double shorter(PulsePump pump) {
    return Math.min(pump.heldS(EDGE_S, true), pump.heldS(EDGE_S, false));
  }

  private static double longer(PulsePump pump) {
    return Math.max(pump.heldS(EDGE_S, true), pump.heldS(EDGE_S, false));
  }

  private static void says(String row) throws IOException {
    String note = Files.readString(Path.of("..", "hardware-notes", "pulse-held-relay.md"));
    assertTrue(note.contains(row), "pulse-held-relay.md does not say: " + row);
  }

  private static String ms(double seconds) {
    return String.format(Locale.ROOT, "%.0f ms", seconds * 1000);
  }

  private static String volts(double volts) {
    return String.format(Locale.ROOT, "%.2f V", volts);
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void itHoldsAtEveryCornerWithAnEdgeEachScanAndWithOneScanLate() throws Exception {
    double shortest = least(PulseHeldRelayArithmeticTest::shorter);
    assertTrue(shortest > LATE_S + 0.03, "shortest hold " + shortest);
    says("| shortest hold after an edge | " + ms(shortest) + " |");
    for (PulsePump pump : CORNERS) {
      assertTrue(pump.lowestWithOneLateV(EDGE_S, LATE_S) > pump.thresholdV(), pump.toString());
      assertTrue(pump.lowestV(EDGE_S) > 1.6 * 1.03 * 1.06, "it comes in: threshold, hysteresis");
    }
    says("| lowest voltage, an edge each 100 ms | " + volts(least(p -> p.lowestV(EDGE_S))) + " |");
    double late = least(p -> p.lowestWithOneLateV(EDGE_S, LATE_S));
    says("| lowest voltage, one edge after 300 ms | " + volts(late) + " |");
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void itLetsGoAtEveryCornerWithinASecondOfTheLastEdgeWhicheverLevelTheLineStopsAt()
      throws Exception {
    double longest = most(PulseHeldRelayArithmeticTest::longer);
    assertTrue(longest + RELEASE_S < 1.0, "longest hold " + longest);
    says("| longest hold after the last edge | " + ms(longest) + " |");
    says("| with the relay's own release, 50 ms | " + ms(longest + RELEASE_S) + " |");
    PulsePump nominal = PulsePump.NOMINAL;
    says("| in the middle of every tolerance | " + ms(longer(nominal)) + " |");
    assertEquals(shorter(nominal), longer(nominal), 0.001, "both levels alike");
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aSteadyLevelHoldsNothing() throws Exception {
    double left =
        Math.max(
            most(p -> p.afterSilenceV(EDGE_S, 5, true)),
            most(p -> p.afterSilenceV(EDGE_S, 5, false)));
    assertTrue(left < 0.01, "after five seconds " + left);
    // 1000 s of a film capacitor's insulation (from memory: MΩ·µF of its data sheet) on 4.7 µF.
    double insulationOhm = 1000 / 4.7e-6;
    double through = most(p -> p.steadyV(insulationOhm));
    assertTrue(through < 0.01, "through sound insulation " + through);
    says(
        "| through the insulation of a sound coupling capacitor | "
            + Math.round(through * 1000)
            + " mV |");
    double bad = most(PulsePump::holdingInsulationOhm);
    says(
        "| a coupling capacitor worse than this holds a steady level: replace it | "
            + Math.round(bad / 1000)
            + " kΩ |");
  }

  @Test
  void oneStrayEdgeHoldsNoLongerThanTheLastOfMany() throws Exception {
    double longest = most(PulsePump::heldByOneEdgeS);
    assertTrue(longest + RELEASE_S < 1.0);
    says("| one stray edge after a rest holds at most | " + ms(longest) + " |");
  }

  /** An outside check: a simulator of circuits with the exponential curve of a real diode. */
  @Test
  void aCircuitSimulatorSaysTheSame() throws Exception {
    // ngspice, 1N-type silicon diode (IS 2.52 nA, N 1.752), detector 1 µA, at -10, 25 and 60 °C.
    double[] simulatedS = {0.576, 0.606, 0.634};
    PulsePump n = PulsePump.NOMINAL;
    for (double s : simulatedS) {
      assertTrue(shorter(with(n, 0.5)) < s && s < longer(with(n, 0.15)), "a drop in between");
    }
    assertEquals(simulatedS[1], longer(with(n, 0.35)), 0.01);
  }

  private static PulsePump with(PulsePump n, double diodeV) {
    return new PulsePump(
        n.supplyV(),
        diodeV,
        n.couplingAF(),
        n.couplingBF(),
        n.reservoirF(),
        n.bleedOhm(),
        n.gateOhm(),
        0,
        n.detectorA(),
        n.thresholdV());
  }

  /** By hand: V = V0·exp(-t/RC), with the coupling capacitor beside the reservoir. */
  @Test
  void theFormulaOfTheNoteGivesTheSame() {
    PulsePump n = PulsePump.NOMINAL;
    double tauS = (n.couplingAF() + n.reservoirF()) / (1 / n.bleedOhm() + 1 / n.gateOhm());
    double restV = n.afterSilenceV(0.1, 0.01, true);
    double byHandS = 0.01 + tauS * Math.log(restV / n.thresholdV());
    assertEquals(byHandS, n.heldS(0.1, true), 0.03); // the leaks, which the formula leaves out
    assertEquals(0.684, tauS, 0.001);
  }
}
