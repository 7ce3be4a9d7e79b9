package trayward.host.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A tray of 0.12 m², here 0.3 m by 0.4 m, at 42 °C in a room of 21 °C at half humidity. Own
 * arithmetic; correlations from memory.
 */
class FreeSurfaceTest {

  private static final FreeSurface TRAY = new FreeSurface(0.12, 1.4);

  /** The reference tray's 0.072 m², as 0.24 m by 0.3 m. */
  private static final FreeSurface REFERENCE = new FreeSurface(0.072, 1.08);

  /** 5.85 W/(m² K), 14.7 W, within 10 %. */
  @Test
  void naturalConvectionIsThatOfTheCheck() {
    double h = TRAY.convectionWPerM2K(42, 21, 0.5);
    assertEquals(1, h / 5.85, 0.1);
    assertEquals(1, h * 0.12 * 21 / 14.7, 0.1);
  }

  /** 6.10 W/(m² K), 15.37 W, Stefan-Boltzmann with emissivity 0.95. */
  @Test
  void radiationIsThatOfTheCheck() {
    double h = FreeSurface.radiationWPerM2K(42, 21);
    assertEquals(6.10, h, 0.05);
    assertEquals(15.37, h * 0.12 * 21, 0.05);
    double fourth = Math.pow(42 + 273.15, 4) - Math.pow(21 + 273.15, 4);
    assertEquals(0.95 * 5.670374419e-8 * fourth, h * 21, 1e-9);
  }

  /** 104.5 W within 15 %, with the pool equation in still air. */
  @Test
  void withEvaporationTheSurfaceLosesWhatTheCheckSays() {
    PoolEvaporation still = new PoolEvaporation(0.12, 0, 21, 0.5, 1);
    double lossW = still.wattsAt(42) + 21 * TRAY.dryWPerK(42, 21, 0.5);
    assertEquals(1, lossW / 104.5, 0.15);
  }

  /**
   * 111.2 g/h within 10 g/h: the same convection carries vapour, by the analogy of Lewis with the
   * diffusion of vapour in air, 2.6e-5 m²/s at 298 K (handbook, from memory).
   */
  @Test
  void byTheAnalogyOfHeatAndVapourTheSameConvectionEvaporatesAsTheCheckSays() {
    double filmK = 273.15 + 31.5;
    double density = 101_325 / (287.055 * filmK);
    double diffusivity = 0.0264 / (density * 1007);
    double lewis = diffusivity / (2.6e-5 * Math.pow(filmK / 298, 1.5));
    double speed =
        TRAY.convectionWPerM2K(42, 21, 0.5) / (density * 1007 * Math.pow(lewis, 2.0 / 3));
    double drop = Water.saturatedAirGPerM3(42) - 0.5 * Water.saturatedAirGPerM3(21);
    assertEquals(111.2, speed * drop * 0.12 * 3600, 10);
  }

  /**
   * The reference bath's 2.5 W/K are a whole tray's dry losses. At 40 °C in 20 °C its surface makes
   * up a third; a wall 6 cm high all round another third at the same coefficients; with its base,
   * as large as its surface, all of it. On a plate the base loses less, in a draught all lose more:
   * hence only within 15 %.
   */
  @Test
  void theReferenceBathsDryLossIsItsSurfaceWithWallsAndBase() {
    double surface = REFERENCE.dryWPerK(40, 20, 0.5);
    assertEquals(1.0 / 3, surface / 2.5, 0.05);
    double each = surface / REFERENCE.areaM2();
    double walls = each * 0.06 * REFERENCE.perimeterM();
    double base = each * 0.072;
    assertTrue(surface + walls < 2.5, "surface and walls " + (surface + walls));
    assertEquals(1, (surface + walls + base) / 2.5, 0.15);
    assertEquals(2.5, HeatedTray.usualBathLossWPerK(0.072));
  }

  /** Incropera and DeWitt, table A.4 (from memory): mu 184.6e-7, 208.2e-7; k 26.3e-3, 30.0e-3. */
  @ParameterizedTest(name = "{0} K")
  @CsvSource({"300, 184.6e-7, 26.3e-3", "350, 208.2e-7, 30.0e-3"})
  void airIsThatOfTheHandbook(double kelvin, double viscosity, double conductivity) {
    assertEquals(1, FreeSurface.airViscosity(kelvin) / viscosity, 0.01);
    assertEquals(1, FreeSurface.airConductivity(kelvin) / conductivity, 0.01);
  }

  @Test
  void aTrayOfThePapersShapeHasThePerimeterOfItsSides() {
    assertEquals(1.8, FreeSurface.ofPaperShape(0.2).perimeterM(), 1e-12); // 0.4 m by 0.5 m
  }

  @Test
  void warmerAndDamperAboveTheRoomItConvectsMoreAndColderLess() {
    double warm = TRAY.convectionWPerM2K(30, 21, 0.5);
    assertTrue(TRAY.convectionWPerM2K(42, 21, 0.5) > warm);
    assertTrue(TRAY.convectionWPerM2K(30, 21, 0.9) < warm, "damp air is nearer to the surface's");
    double cold = TRAY.convectionWPerM2K(10, 21, 0.5);
    assertTrue(cold > 0 && cold < warm, "cold " + cold);
  }

  /** Above Ra 1e7 the length no longer matters; at the change the two laws differ by 6 %. */
  @Test
  void aLargePoolConvectsTheSameAtAnySize() {
    double pool = new FreeSurface(16, 16).convectionWPerM2K(42, 21, 0.5);
    assertEquals(pool, new FreeSurface(64, 32).convectionWPerM2K(42, 21, 0.5), 1e-9);
    assertEquals(1, pool / TRAY.convectionWPerM2K(42, 21, 0.5), 0.15);
  }
}
