package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** The candidates that a plate's course leaves. */
class PlateBankTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;

  /** The reference plate over a bath held at 20 °C, by its own equation, heated or not. */
  private static PlateBank course(int seconds, boolean commanded, boolean arrives) {
    HeatLag heat = HeatLag.START;
    ReadingTrail bath = ReadingTrail.START;
    PlateBank bank = PlateBank.start(TRAY, 20);
    double plate = 20;
    double lagged = 20;
    for (int s = 0; s < seconds; s++) {
      for (int i = 0; i < 10; i++) {
        double power = arrives ? TRAY.heaterW() : 0;
        plate += 0.1 * (power - TRAY.plateToBathWPerK() * (plate - 20)) / TRAY.plateJPerK();
        lagged += (plate - lagged) * HeatLag.share(0.1, 3);
        heat = heat.next(commanded, 0.1);
      }
      bath = bath.next(new ThermalInput.Sample(20, s * 1_000_000_000L));
      bank = bank.next(1, heat, bath, lagged, RoomModel.REFERENCE);
      heat = heat.taken();
    }
    return bank;
  }

  @Test
  void theWarmUpOfTheReferenceTrayLeavesItsOwnParametersAmongTheCandidates() {
    PlateBank bank = course(300, true, true);
    assertEquals(0, bank.side());
    int atStart = PlateBank.start(TRAY, 20).alive();
    assertTrue(bank.alive() > 0 && bank.alive() < atStart / 3, bank.alive() + " of " + atStart);
    // 18 W/K over 1100 J/K (reference-tray.md)
    assertEquals(18.0 / 1100, bank.coolingPerS(), 0.35 * 18 / 1100);
  }

  @Test
  void aPlateThatStaysColdUnderCommandedHeatLeavesNone() {
    assertEquals(-1, course(60, true, false).side());
  }

  @Test
  void aPlateThatWarmsWithoutCommandLeavesNone() {
    assertEquals(1, course(60, false, true).side());
  }

  @Test
  void aPlateAtRestKeepsThemAll() {
    assertEquals(PlateBank.start(TRAY, 20).alive(), course(600, false, false).alive());
  }
}
