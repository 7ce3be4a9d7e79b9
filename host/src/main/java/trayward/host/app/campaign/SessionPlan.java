package trayward.host.app.campaign;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A session as drawn: all there is to know before it runs. Immutable.
 *
 * @param seed its seed
 * @param reached the state it is led to before the fault
 * @param durationS length, s
 * @param tray tables of tray, room, probes and control, as TOML
 * @param plateFitted a plate probe is wired
 * @param secondFitted a second bath probe is wired
 * @param faults what breaks, in order of time
 * @param acts what the person does, in order of time
 * @param whole it runs to its end even where a lockout has nothing more to come
 */
record SessionPlan(
    long seed,
    Reached reached,
    double durationS,
    String tray,
    boolean plateFitted,
    boolean secondFitted,
    List<FaultPlan> faults,
    List<Act> acts,
    boolean whole) {

  /** Rated speed of the scenario contract's fan, 1/min. */
  static final double RATED_RPM = 1500;

  /** Rated flow of the scenario contract's fan, m³/h. */
  static final double RATED_M3_PER_H = 150;

  /**
   * Something the person does.
   *
   * @param atS when, s
   * @param word the scenario's word for it
   * @param more further keys, as TOML lines
   */
  record Act(double atS, String word, String more) {

    String toml() {
      return String.format(Locale.ROOT, "[[at]]\nt_s = %.1f\ndo = \"%s\"\n%s", atS, word, more);
    }
  }

  /** The same with its length, s. */
  SessionPlan lasting(double seconds) {
    return new SessionPlan(
        seed, reached, seconds, tray, plateFitted, secondFitted, faults, acts, whole);
  }

  /** The faults that are tried: without one that only provokes a lockout. */
  List<FaultPlan> tried() {
    return faults.stream().filter(f -> !f.provoked()).toList();
  }

  boolean healthy() {
    return faults.isEmpty();
  }

  /** Whether the part is there to break. */
  boolean fitted(Part part) {
    return switch (part) {
      case SECOND_PROBE -> secondFitted;
      case PLATE_PROBE -> plateFitted;
      case FAN,
          DUCT,
          AIRFLOW_SWITCH,
          TACHOMETER,
          BATH_PROBE,
          RELAY,
          SAFETY_RELAY,
          HEATER,
          TRAY,
          HOST,
          PROGRAM,
          CLOCK,
          MAINS ->
          true;
    };
  }

  /** When the last thing happens, s. */
  double lastEntryS() {
    double last = 0;
    for (Act act : acts) {
      last = Math.max(last, act.atS());
    }
    for (FaultPlan fault : faults) {
      last = Math.max(last, Double.isFinite(fault.endS()) ? fault.endS() : fault.atS());
    }
    return last;
  }

  /** The scenario file. */
  String toml() {
    return String.format(
            Locale.ROOT,
            "name = \"campaign %d\"\nseed = %d\nduration_s = %.0f\n",
            seed,
            seed,
            durationS)
        + tray
        + acts.stream().map(Act::toml).collect(Collectors.joining())
        + faults.stream().map(FaultPlan::toml).collect(Collectors.joining());
  }

  /** The faults in a few words. */
  String brief() {
    return healthy()
        ? "healthy"
        : faults.stream().map(FaultPlan::brief).collect(Collectors.joining(" + "));
  }
}
