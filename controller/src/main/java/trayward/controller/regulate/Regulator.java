package trayward.controller.regulate;

import java.util.Optional;

/** Demands a duty from what the probes say. It only asks; the interlock decides. Scan thread. */
public interface Regulator {

  /** The duty wanted now, 0 to 1; 0 whenever heat is not allowed or the bath is not known. */
  double duty(RegulatorInput input);

  /** What the last warm-up taught of the tray; empty where nothing is learned, or not yet. */
  default Optional<TrayLesson> lesson() {
    return Optional.empty();
  }
}
