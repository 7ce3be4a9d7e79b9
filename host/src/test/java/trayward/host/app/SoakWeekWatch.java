package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import trayward.controller.app.Rehearsal;
import trayward.controller.app.RehearsalRow;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.scan.Snapshot;

/**
 * Watches a simulated week as it passes: tells the host, judges heat and what is latched, and looks
 * at the program after each day. One thread.
 */
final class SoakWeekWatch implements Rehearsal.Listener {

  private final SoakWeekPlan plan;
  private final SoakWeekHost host;
  private final SoakTable table;
  private final long began = System.nanoTime();
  private int nextSession;
  private int nextStart;
  private int nextAway;
  private boolean away;
  private double lastStartS = -1;
  private double restedS;
  private boolean dark;
  private @Nullable Snapshot last;
  private String latched = "";
  private long heated;
  private int cuts;
  private int cutsInLockout;
  private int trips;

  SoakWeekWatch(SoakWeekPlan plan, SoakWeekHost host, SoakTable table) {
    this.plan = plan;
    this.host = host;
    this.table = table;
  }

  @Override
  public void row(RehearsalRow row) {
    double t = row.tS();
    host(t);
    host.row(row);
    while (nextStart < plan.starts().size() && plan.starts().get(nextStart) <= t + 1e-9) {
      lastStartS = plan.starts().get(nextStart++);
    }
    heat(row);
    power(row);
    if (t > 0 && Math.round(t * 10) % (SoakWeekPlan.DAY_S * 10L) == 0) {
      look(t / SoakWeekPlan.DAY_S);
    }
  }

  private void host(double t) {
    if (nextAway < plan.away().size()) {
      SoakWeekPlan.HostAway next = plan.away().get(nextAway);
      if (!away && t >= next.fromS()) {
        host.leave(next.inOrder());
        away = true;
      }
      if (away && t >= next.toS()) {
        host.comeBack();
        away = false;
        nextAway++;
      }
    }
  }

  /** SR-13: heat needs a start that came after whatever ended the last run. */
  private void heat(RehearsalRow row) {
    double t = row.tS();
    switch (row.state()) {
      case "OFF", "AFTER_RUN", "LOCKOUT", "NO_POWER" -> restedS = t;
      default -> {}
    }
    Snapshot s = row.snapshot();
    boolean permitted = s != null && s.permitted() && restedS < t && !stalled(row);
    assertTrue(!permitted || lastStartS > restedS, "heat without a start at " + t + " s");
    if (row.heatW() == 0) {
      return;
    }
    heated++;
    assertTrue(!row.state().equals("NO_POWER"), "heat without power at " + t + " s");
    while (nextSession < plan.sessions().size() && plan.sessions().get(nextSession).toS() + 2 < t) {
      nextSession++;
    }
    assertTrue(
        nextSession < plan.sessions().size() && t >= plan.sessions().get(nextSession).fromS(),
        "heat at " + t + " s, where nobody is");
  }

  private static boolean stalled(RehearsalRow row) {
    return row.state().equals("STALLED");
  }

  /** SR-12: what was latched before a power cut is latched after it. */
  private void power(RehearsalRow row) {
    boolean nowDark = row.state().equals("NO_POWER");
    Snapshot now = row.snapshot();
    if (nowDark && !dark) {
      latched = cause(last);
      cuts++;
      cutsInLockout += latched.isEmpty() ? 0 : 1;
    }
    if (dark && !nowDark && now != null) {
      boolean rests = now.state().name().equals(latched.isEmpty() ? "OFF" : "LOCKOUT");
      assertTrue(rests, "after power came back at " + row.tS() + " s: " + now.state());
      assertEquals(latched, cause(now), "at " + row.tS() + " s");
    }
    dark = nowDark;
    last = now;
  }

  private static String cause(@Nullable Snapshot s) {
    return s == null ? "" : s.firstOut().map(Enum::name).orElse("");
  }

  @Override
  public void event(double tS, TrayEvent event) {
    trips += event.kind() == EventKind.TRIP ? 1 : 0;
    if (event.kind() == EventKind.MARK) {
      host.mark(event.subject());
    }
    Snapshot seen = last;
    if (seen != null) {
      host.event(event, seen);
    }
  }

  @Override
  public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {}

  @Override
  public boolean wantsBounds() {
    return false;
  }

  private void look(double day) {
    try {
      System.gc();
      System.gc(); // what the first finds to be finalised, the second takes
      ProcessFigures own = ProcessFigures.of(ProcessHandle.current().pid());
      table.add(
          day,
          ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / 1048576.0,
          own.threads(),
          own.files(),
          own.residentMib(),
          Files.size(host.folder().resolve("trayward-log.db")) / 1048576.0,
          heated / 36_000.0,
          trips,
          cuts,
          host.lives(),
          host.marksKept(),
          day * SoakWeekPlan.DAY_S / ((System.nanoTime() - began) / 1e9));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  int trips() {
    return trips;
  }

  int cuts() {
    return cuts;
  }

  int cutsInLockout() {
    return cutsInLockout;
  }

  /** Time of true heat, h. */
  double heatedH() {
    return heated / 36_000.0;
  }
}
