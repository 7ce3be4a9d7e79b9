package trayward.controller.scan;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import trayward.controller.event.Alarm;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;
import trayward.controller.keep.RelayWear;
import trayward.controller.safety.LevelEstimate;
import trayward.controller.safety.State;
import trayward.controller.sense.Reading;

/**
 * Everything one scan saw and decided, for other threads. Immutable.
 *
 * @param scan number of the scan, from 1
 * @param nowNanos its monotonic time
 * @param uptimeMs time since the first scan, ms
 * @param state state of the interlock
 * @param stateMs how long it has been there, ms
 * @param remainingMs time left of purge or after-run, ms; -1 where none runs
 * @param bath bath reading
 * @param secondBath second bath reading
 * @param plate plate reading
 * @param setC set temperature, °C
 * @param duty duty demanded under the permit, 0 to 1; 0 without one
 * @param permitted heat was permitted in this scan
 * @param heaterOn heater relay commanded closed
 * @param safetyRelay safety relay commanded closed
 * @param watchdogLevel level of the watchdog line after this scan
 * @param fanCommanded fan commanded on
 * @param fanRpm tachometer, 1/min
 * @param airflow airflow switch closed
 * @param fanProven the fan counts as running
 * @param firstOut cause of a lockout that came first
 * @param alarms latched alarms, first-out first
 * @param withheld why heat is withheld; empty where it is permitted
 * @param presenceDueMs time until presence is due, ms
 * @param storeWritable the controller's record can be written
 * @param wear closings of both relays so far
 * @param level what is thought of the liquid in the tray
 * @param probes each probe before and after its correction
 * @param tray what is known of the tray beside its level
 */
public record Snapshot(
    long scan,
    long nowNanos,
    long uptimeMs,
    State state,
    int stateMs,
    int remainingMs,
    Reading bath,
    Reading secondBath,
    Reading plate,
    double setC,
    double duty,
    boolean permitted,
    boolean heaterOn,
    boolean safetyRelay,
    boolean watchdogLevel,
    boolean fanCommanded,
    double fanRpm,
    boolean airflow,
    boolean fanProven,
    Optional<TripCause> firstOut,
    List<Alarm> alarms,
    Set<WithheldReason> withheld,
    int presenceDueMs,
    boolean storeWritable,
    RelayWear wear,
    LevelEstimate level,
    ProbeViews probes,
    TrayView tray) {

  /** Time from power-up to another monotonic time, s; 0 for one before it. */
  public double uptimeS(long atNanos) {
    return Math.max(0, atNanos / 1e9 - (nowNanos / 1e9 - uptimeMs / 1000.0));
  }

  /** No heat, and none asked for: a correction of a probe moves no limit under heat. */
  public boolean rests() {
    return (state == State.OFF || state == State.AFTER_RUN) && !permitted && !heaterOn;
  }
}
