package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Conservation of energy over an hour of any tray: electrical energy, and what pours and sheets
 * bring, is stored, convected, evaporated, or leaves with the liquid as its heat.
 */
class EnergyBalanceTest {

  private static final double STEP_S = 0.1;
  private static final int HOUR = 36_000;

  /** A tenth of a per cent of what went in. */
  private static final double SHARE = 1e-3;

  /** These books and this plant agree to 1e-8; so even a small fault of either would show. */
  private static final double REACHED = 1e-7;

  /** Full heat for ten minutes, then pulses of 2 s in 5 s. */
  private static double pulsesW(int step, double heaterW) {
    return step < 6000 || step % 50 < 20 ? heaterW : 0;
  }

  @ParameterizedTest(name = "{0} L, {1} W/K, {2} W from {3} °C, wall {4} J/K, covered {5}")
  @CsvSource({
    "1, 18, 250, 20, 0, false",
    "1, 18, 250, 20, 600, false",
    "1, 18, 250, 20, 0, true",
    "1, 18, 250, 20, 600, true",
    "0.5, 12, 150, 20, 0, false",
    "0.5, 25, 150, 30, 300, false",
    "3, 25, 400, 20, 0, false",
    "3, 18, 400, 15, 1500, false",
    "2, 12, 250, 45, 900, true"
  })
  void withPulsesItCloses(
      double litres,
      double coupling,
      double heaterW,
      double startC,
      double wallJPerK,
      boolean covered) {
    Plant plant =
        new Plant(Trays.tray(new Trays.Change(litres, coupling, heaterW, startC, wallJPerK)));
    plant.cover(covered);
    EnergyBalance balance = new EnergyBalance(plant);
    for (int i = 0; i < HOUR; i++) {
      balance.step(STEP_S, pulsesW(i, heaterW));
    }
    assertCloses(balance, plant);
    assertEquals(covered, balance.evaporatedJ == 0);
  }

  /** Without the heat of the liquid that leaves the books would be off by more than a per cent. */
  @Test
  void theLiquidThatLeavesTakesItsHeatWithIt() {
    Plant plant = new Plant(Trays.startingAt(40, 250));
    EnergyBalance balance = new EnergyBalance(plant);
    for (int i = 0; i < HOUR; i++) {
      balance.step(STEP_S, 0.4307 * 250);
    }
    assertCloses(balance, plant);
    assertTrue(balance.carriedJ > 0.01 * balance.inJ(), "carried " + balance.carriedJ);
    assertTrue(balance.evaporatedJ > 0.4 * balance.inJ(), "evaporated " + balance.evaporatedJ);
  }

  /** A session: covered warm-up, a pour, sheets, the tray lifted for a minute, cooling at last. */
  @Test
  void withEverythingAPersonDoesItCloses() {
    PlantParameters p = Trays.tray(new Trays.Change(1, 18, 250, 20, 600));
    Plant plant = new Plant(p);
    plant.cover(true);
    EnergyBalance balance = new EnergyBalance(plant);
    for (int i = 0; i < HOUR; i++) {
      if (i == 6000) {
        plant.cover(false);
      } else if (i == 9000) {
        balance.pour(0.3, 20);
      } else if (i > 9000 && i % 3000 == 0) {
        balance.sheet(210, 15);
      }
      balance.dry(i >= 20_000 && i < 20_600);
      balance.step(STEP_S, i < 30_000 ? pulsesW(i, 250) : 0);
    }
    assertCloses(balance, plant);
    assertTrue(balance.broughtJ < -20_000, "sheets took heat: " + balance.broughtJ);
  }

  /** A bath left to itself with no heat: what it loses is what it held. */
  @Test
  void coolingItCloses() {
    Plant plant = new Plant(Trays.startingAt(45, 250));
    EnergyBalance balance = new EnergyBalance(plant);
    double heldJ = balance.storedJ();
    for (int i = 0; i < HOUR; i++) {
      balance.step(STEP_S, 0);
    }
    assertEquals(0, balance.accountedJ() / heldJ, REACHED);
    assertTrue(balance.storedJ() < 0.5 * heldJ, "it cooled");
  }

  private static void assertCloses(EnergyBalance balance, Plant plant) {
    assertEquals(balance.electricalJ, plant.energyJ(), 1e-6);
    assertEquals(balance.evaporatedL * 1000, plant.evaporatedMl(), 1e-3);
    double open = balance.accountedJ() / balance.inJ() - 1;
    assertEquals(0, open, SHARE);
    assertEquals(0, open, REACHED, "not only to a per mille");
  }
}
