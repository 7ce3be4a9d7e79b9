package trayward.controller.app;

import trayward.controller.regulate.Fits;
import trayward.controller.regulate.PidRegulator;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayRegulator;
import trayward.controller.safety.Limits;

/** Makes the regulator that a control table names. Stateless. */
final class Regulators {

  private Regulators() {}

  static Regulator of(
      ControlTable control,
      boolean plateFitted,
      TrayPrior prior,
      RoomModel room,
      Limits limits,
      Fits fits) {
    if (control.regulator().equals("pid")) {
      return new PidRegulator(prior.belief().model(), room, limits.plateCeilingC());
    }
    return new TrayRegulator(
        prior.belief(), prior.doubt(), room, limits.plateCeilingC(), plateFitted, fits);
  }
}
