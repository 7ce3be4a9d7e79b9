package trayward.host.app.campaign;

import java.util.Locale;
import trayward.controller.event.TripCause;

/**
 * A fault of a session.
 *
 * @param kind which
 * @param atS when it begins, s
 * @param endS when it mends, s; infinite for never
 * @param size its number where it has one (1/min, K, s), else 0
 * @param provoked it is there only to bring the interlock into lockout, and is not what is tried
 */
record FaultPlan(FaultKind kind, double atS, double endS, double size, boolean provoked) {

  /** What a mended fault leaves behind is gone after this, s: a probe's lag, a fan's spin-up. */
  static final double AFTERMATH_S = 120;

  /** Slower than this share of its rated speed a fan must be found (design, SR-02). */
  private static final double SLOW_SHARE = 0.70;

  /** 2 K, two data-sheet offsets of 0.5 K and noise: apart beyond doubt. */
  private static final double APART_K = 3.2;

  /** A second late, and the period itself. */
  private static final double LATE_S = 1.2;

  /** Whether it can be behind what happens at {@code tS}. */
  boolean acts(double tS) {
    return tS >= atS - 1e-9 && tS <= endS + AFTERMATH_S;
  }

  /** Whether it may be called {@code cause} in this session. */
  boolean explains(TripCause cause, SessionPlan plan) {
    return plan.fitted(kind.part())
        && kind.explains().stream().anyMatch(e -> e.cause() == cause && e.when().holds(this, plan));
  }

  /** From when on it matters in this session. */
  Need need(SessionPlan plan) {
    boolean matters =
        plan.fitted(kind.part())
            && switch (kind.words()) {
              case "fan-slows" -> size < SLOW_SHARE * SessionPlan.RATED_RPM;
              case "probe-offset", "second-probe-offset" ->
                  plan.secondFitted() && Math.abs(size) > APART_K;
              case "scan-stall" -> size > LATE_S;
              default -> true;
            };
    return matters ? kind.need() : Need.NEVER;
  }

  /** Its table in a scenario. */
  String toml() {
    String key =
        switch (kind.words()) {
          case "fan-slows" -> "rpm";
          case "probe-offset", "second-probe-offset", "plate-probe-offset" -> "kelvin";
          case "scan-stall", "wall-clock-step" -> "seconds";
          default -> "";
        };
    StringBuilder out = new StringBuilder();
    out.append(String.format(Locale.ROOT, "[[fault]]\nt_s = %.1f\n", atS));
    out.append("kind = \"").append(kind.words()).append("\"\n");
    if (!key.isEmpty()) {
      out.append(String.format(Locale.ROOT, "%s = %.1f\n", key, size));
    }
    if (Double.isFinite(endS) && kind.lasts()) {
      out.append(String.format(Locale.ROOT, "duration_s = %.1f\n", endS - atS));
    }
    return out.toString();
  }

  /** In a few words. */
  String brief() {
    return String.format(Locale.ROOT, "%s at %.1f s%s", kind.words(), atS, sizeWords());
  }

  private String sizeWords() {
    String number = size == 0 ? "" : String.format(Locale.ROOT, " (%.1f)", size);
    boolean mends = Double.isFinite(endS) && kind.lasts();
    return number + (mends ? String.format(Locale.ROOT, " to %.1f s", endS) : "");
  }
}
