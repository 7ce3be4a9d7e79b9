package trayward.controller.keep;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import trayward.controller.port.WallClock;

/**
 * Keeps the due dates of maintenance (SR-23): the only one in the controller that decides anything
 * by the wall clock (SR-22). Safe on any thread but the scan's: it writes to the disk.
 */
public final class UpkeepDesk {

  /** Hours of use are written this often, s: a power cut may forget so much. */
  private static final double SAVE_S = 600;

  /** Longest time counted between two looks at the tray, s: after that nobody looked. */
  private static final double GAP_S = 10;

  private static final long DAY_S = 24 * 3600;

  private final UpkeepFile file;
  private final UpkeepPlan plan;
  private final WallClock clock;
  private Upkeep upkeep;
  private double unsavedS;
  private long countedNanos = Long.MIN_VALUE;

  /** Opens the record in {@code file}, whose folder must exist. */
  public UpkeepDesk(Path file, UpkeepPlan plan, WallClock clock) {
    this.file = new UpkeepFile(file);
    this.plan = plan;
    this.clock = clock;
    this.upkeep = this.file.load(today());
  }

  private long today() {
    return Math.floorDiv(clock.epochSeconds(), DAY_S);
  }

  /** What the interface shows. */
  public synchronized UpkeepReport report() {
    long today = today();
    Set<UpkeepItem> overdue = upkeep.overdue(today, plan);
    return new UpkeepReport(upkeep, plan, today, upkeep.clockSet(today), overdue);
  }

  /** Why a start must be confirmed now, in words; empty where it need not be. */
  public String startUnconfirmed() {
    UpkeepReport now = report();
    List<String> why = new ArrayList<>();
    if (!now.clockSet()) {
      why.add("the clock is not set: it shows " + LocalDate.ofEpochDay(now.today()));
    }
    if (now.overdue().contains(UpkeepItem.BREAKER_TEST)) {
      why.add(
          "the ground-fault breaker test was due on "
              + LocalDate.ofEpochDay(now.due(UpkeepItem.BREAKER_TEST)));
    }
    return String.join("; ", why);
  }

  /** Records that something was done today; empty where it was, else why not, in words. */
  public synchronized String done(UpkeepItem item) {
    long today = today();
    if (today < Upkeep.BUILD_DAY) {
      return "the clock is not set: it shows " + LocalDate.ofEpochDay(today);
    }
    Upkeep next = upkeep.done(item, today);
    if (!file.save(next)) {
      return "the record of upkeep cannot be written";
    }
    upkeep = next;
    unsavedS = 0;
    return "";
  }

  /**
   * Counts hours of use.
   *
   * @param nowNanos monotonic time of what is told
   * @param vapour heat is in progress or the bath is warm
   * @param fan the fan is commanded
   */
  public synchronized void count(long nowNanos, boolean vapour, boolean fan) {
    double elapsedS = countedNanos == Long.MIN_VALUE ? 0 : (nowNanos - countedNanos) / 1e9;
    countedNanos = nowNanos;
    upkeep = upkeep.used(Math.max(0, Math.min(GAP_S, elapsedS)), vapour, fan);
    unsavedS += elapsedS;
    if (unsavedS >= SAVE_S) {
      save();
    }
  }

  /** Writes the hours counted. */
  public synchronized void save() {
    unsavedS = 0;
    var unused = file.save(upkeep);
  }
}
