package trayward.controller.app;

import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.TrayEvent;
import trayward.controller.regulate.TrayLesson;
import trayward.controller.scan.Snapshot;

/** A rehearsed warm-up that ends once its lesson is complete. */
final class Warmed implements Rehearsal.Listener {

  private @Nullable Snapshot last;

  private Warmed() {}

  /** Warms up a tray; {@code extra} are tables of its scenario. */
  static TrayLesson up(long seed, String extra) throws ConfigRefused {
    Warmed warmed = new Warmed();
    new Rehearsal(Scenario.parse("s.toml", scenario(seed, extra)), warmed).run();
    return warmed.lesson().orElseThrow();
  }

  private Optional<TrayLesson> lesson() {
    Snapshot now = last;
    return now == null ? Optional.empty() : now.tray().lesson();
  }

  static String scenario(long seed, String extra) {
    return "seed = "
        + seed
        + "\nduration_s = 3600\n"
        + extra
        + "\n[[at]]\nt_s = 0\ndo = \"start\"\n";
  }

  @Override
  public void row(RehearsalRow row) {
    if (row.snapshot() != null) {
      last = row.snapshot();
    }
  }

  @Override
  public void event(double tS, TrayEvent event) {}

  @Override
  public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {}

  @Override
  public boolean wantsBounds() {
    return false;
  }

  @Override
  public boolean enough() {
    return lesson().map(TrayLesson::complete).orElse(false);
  }
}
