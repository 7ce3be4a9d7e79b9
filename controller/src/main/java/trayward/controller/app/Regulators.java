package trayward.controller.app;

import trayward.controller.regulate.Fits;
import trayward.controller.regulate.PidRegulator;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayBelief;
import trayward.controller.regulate.TrayDoubt;
import trayward.controller.regulate.TrayModel;
import trayward.controller.regulate.TrayRegulator;
import trayward.controller.safety.Limits;

/** Makes the regulator that a control table names. Stateless. */
final class Regulators {

  private Regulators() {}

  static Regulator of(
      ControlTable control,
      boolean plateFitted,
      TrayModel model,
      RoomModel room,
      Limits limits,
      Fits fits) {
    if (control.regulator().equals("pid")) {
      return new PidRegulator(model, room, limits.plateCeilingC());
    }
    return new TrayRegulator(
        TrayBelief.declared(model),
        TrayDoubt.DECLARED,
        room,
        limits.plateCeilingC(),
        plateFitted,
        fits);
  }
}
