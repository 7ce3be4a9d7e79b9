package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import trayward.controller.regulate.Fits;
import trayward.controller.regulate.PidRegulator;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.RegulatorInput;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayBelief;
import trayward.controller.regulate.TrayModel;
import trayward.controller.regulate.TrayRegulator;
import trayward.controller.safety.Limits;

class RegulatorsTest {

  private static Regulator of(String name, boolean plateFitted) {
    return of(name, plateFitted, TrayModel.REFERENCE);
  }

  private static Regulator of(String name, boolean plateFitted, TrayModel model) {
    ControlTable control = new ControlTable(40, name, 5, 0.5, false, false);
    return Regulators.of(
        control,
        plateFitted,
        TrayPrior.of(model, Optional.empty()),
        RoomModel.REFERENCE,
        Limits.STANDARD,
        Fits.inline());
  }

  private static double duty(Regulator regulator, double plateC) {
    return regulator.duty(new RegulatorInput(0.1, 40, 20, 1, plateC, 1, true, false, 1));
  }

  @Test
  void thePlainPidIsTakenWhereItIsNamed() {
    assertInstanceOf(PidRegulator.class, of("pid", true));
  }

  @Test
  void otherwiseTheTrayIsLearnedFromItsDeclaration() {
    TrayRegulator auto = assertInstanceOf(TrayRegulator.class, of("auto", true));
    assertEquals(TrayBelief.declared(TrayModel.REFERENCE), auto.belief());
  }

  @Test
  void aFittedPlateProbeThatIsNotKnownWithholdsHeatAndAMissingOneDoesNot() {
    assertEquals(0, duty(of("auto", true), Double.NaN));
    assertEquals(1, duty(of("auto", false), Double.NaN));
    assertEquals(1, duty(of("auto", true), 20));
  }

  /** At its ceiling the plate gets what it gives: 23 K of 12 W/K and 48 K of 0.5 W/K of 400 W. */
  @Test
  void thePlateIsNotAskedBeyondTheCeilingOfTheLimits() {
    double ceilingC = Limits.STANDARD.plateCeilingC();
    assertEquals(68, ceilingC, 0);
    TrayModel weak = new TrayModel(1, 0.072, 1100, 12, 2.5, 0.5, 400, 1);
    RegulatorInput at = new RegulatorInput(0, 50, 45, 1, ceilingC, 1, true, false, 1);
    assertEquals((23 * 12 + 48 * 0.5) / 400, of("auto", true, weak).duty(at), 1e-9);
    assertEquals(0, of("pid", true, weak).duty(at), 0);
  }
}
