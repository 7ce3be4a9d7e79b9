package trayward.controller.app;

import java.util.OptionalDouble;
import trayward.controller.event.TrayEvent;

/**
 * A rehearsal of two minutes, in memory, before the first real scan. It loads and tries every part
 * that a scan uses, up to the first heat: on a small computer the first scan would otherwise take
 * longer than a scan may be late, and power-up would end in a lockout (SR-17). One thread.
 */
final class DryRun {

  private static final String SCENARIO =
      """
      name = "before the first scan"
      duration_s = 120
      [[at]]
      t_s = 0
      do = "start"
      """;

  private DryRun() {}

  /** Runs it; the name of the state it ends in. */
  static String run() {
    try {
      LastState last = new LastState();
      new Rehearsal(Scenario.parse("(dry run)", SCENARIO), last).run();
      return last.state;
    } catch (ConfigRefused e) {
      throw new IllegalStateException(e);
    }
  }

  private static final class LastState implements Rehearsal.Listener {
    private String state = "";

    @Override
    public void row(RehearsalRow row) {
      state = row.state();
    }

    @Override
    public void event(double tS, TrayEvent event) {}

    @Override
    public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {}

    @Override
    public boolean wantsBounds() {
      return false;
    }
  }
}
