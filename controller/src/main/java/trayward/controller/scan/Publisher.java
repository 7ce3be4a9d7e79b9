package trayward.controller.scan;

import java.util.Set;
import trayward.controller.event.WithheldReason;
import trayward.controller.port.LineReadings;
import trayward.controller.port.ProbeRole;
import trayward.controller.safety.ContactPermit;
import trayward.controller.safety.InterlockInputs;
import trayward.controller.safety.InterlockState;
import trayward.controller.safety.LevelEstimate;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Limits;
import trayward.controller.safety.Permission;
import trayward.controller.safety.State;
import trayward.controller.safety.Verdict;

/** Makes the snapshot other threads see. Scan thread only. */
final class Publisher {

  private static final Set<WithheldReason> NOT_RUNNING = Set.of(WithheldReason.NOT_RUNNING);

  private final Limits limits;
  private final Probes probes;
  private long firstNanos;

  Publisher(Limits limits, Probes probes) {
    this.limits = limits;
    this.probes = probes;
  }

  static Set<WithheldReason> withheld(Verdict verdict) {
    Permission permission = verdict.permission();
    if (permission instanceof Permission.Withheld withheld) {
      return withheld.reasons();
    }
    return permission instanceof ContactPermit ? NOT_RUNNING : Set.of();
  }

  static int presenceDueMs(Verdict verdict, Limits limits) {
    int due = limits.ms(Limit.PRESENCE_MIN) - verdict.next().run().presenceMs();
    return Math.max(0, due);
  }

  Snapshot snapshot(
      long scan,
      long nowNanos,
      LineReadings in,
      InterlockInputs inputs,
      Verdict verdict,
      Written written,
      LevelEstimate level,
      TrayView tray) {
    InterlockState now = verdict.next();
    if (scan == 1) {
      firstNanos = nowNanos;
    }
    return new Snapshot(
        scan,
        nowNanos,
        (nowNanos - firstNanos) / 1_000_000L,
        now.state(),
        now.stateMs(),
        remainingMs(now),
        probes.track(ProbeRole.BATH).reading(),
        probes.track(ProbeRole.SECOND_BATH).reading(),
        probes.track(ProbeRole.PLATE).reading(),
        inputs.setC(),
        written.duty(),
        verdict.permitted(),
        written.heaterOn(),
        verdict.safetyRelay(),
        written.watchdogLevel(),
        verdict.fan(),
        in.fanRpm(),
        in.airflow(),
        fanProven(now, inputs),
        now.latch().firstOut(),
        verdict.alarms(),
        withheld(verdict),
        presenceDueMs(verdict, limits),
        inputs.storeWritable(),
        written.wear(),
        level,
        new ProbeViews(
            probes.view(ProbeRole.BATH),
            probes.view(ProbeRole.SECOND_BATH),
            probes.view(ProbeRole.PLATE)),
        tray);
  }

  private int remainingMs(InterlockState now) {
    return switch (now.state()) {
      case PURGING -> Math.max(0, limits.ms(Limit.PURGE_S) - now.stateMs());
      case AFTER_RUN -> Math.max(0, limits.ms(Limit.AFTER_RUN_S) - now.run().coolMs());
      case OFF, PROVING, READY, HEATING, HOLDING, LOCKOUT -> -1;
    };
  }

  /** SR-02: proven for the proving time; once purging has begun, as long as nothing breaks. */
  private boolean fanProven(InterlockState now, InterlockInputs inputs) {
    boolean longEnough =
        now.air().provenMs() >= limits.ms(Limit.PROVING_S)
            || now.state().purged()
            || now.state() == State.PURGING;
    return inputs.airProven() && now.fan().commanded() && now.fan().clear() && longEnough;
  }
}
