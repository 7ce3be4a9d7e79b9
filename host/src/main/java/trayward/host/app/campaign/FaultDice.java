package trayward.host.app.campaign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Draws which faults a session has, and their sizes. */
final class FaultDice {

  private static final List<FaultKind> KINDS = List.copyOf(Arrays.asList(FaultKind.values()));

  /** Most faults stay for good; some mend, as loose contacts do. */
  private static final double MENDS = 0.2;

  private final Dice dice;

  FaultDice(Dice dice) {
    this.dice = dice;
  }

  /** None in a tenth of sessions; else one, or two of different parts. */
  List<FaultKind> kinds() {
    List<FaultKind> kinds = new ArrayList<>();
    if (dice.chance(0.1)) {
      return kinds;
    }
    FaultKind first = dice.of(KINDS);
    kinds.add(first);
    if (dice.chance(0.5)) {
      FaultKind second = dice.of(KINDS);
      while (second.part() == first.part()) {
        second = dice.of(KINDS);
      }
      kinds.add(second);
    }
    return kinds;
  }

  /** A fault of {@code kind} from {@code atS}. */
  FaultPlan plan(FaultKind kind, double atS) {
    double lasts = dice.magnitudes(0.3, 300);
    boolean mends = dice.chance(MENDS) || kind == FaultKind.POWER_LOSS;
    return new FaultPlan(
        kind,
        atS,
        mends ? Math.round((atS + lasts) * 10) / 10.0 : Double.POSITIVE_INFINITY,
        size(kind),
        false);
  }

  private double size(FaultKind kind) {
    return switch (kind.words()) {
      case "fan-slows" -> dice.tenths(0, 1400);
      case "probe-offset", "second-probe-offset", "plate-probe-offset" ->
          dice.tenths(1, 15) * (dice.chance(0.5) ? 1 : -1);
      case "scan-stall" -> dice.magnitudes(0.3, 60);
      case "wall-clock-step" -> dice.tenths(-1e6, 1e6);
      default -> 0;
    };
  }

  /** A short fault of a part that no tried fault breaks, to bring about a lockout. */
  FaultPlan provoking(List<FaultKind> tried, double atS) {
    List<FaultPlan> free =
        List.of(
                new FaultPlan(FaultKind.AIRFLOW_STUCK_OFF, atS, atS + 5, 0, true),
                new FaultPlan(FaultKind.PROBE_ABSENT, atS, atS + 8, 0, true),
                new FaultPlan(FaultKind.SCAN_STALL, atS, Double.POSITIVE_INFINITY, 1.6, true))
            .stream()
            .filter(f -> tried.stream().noneMatch(k -> k.part() == f.kind().part()))
            .toList();
    return dice.of(free); // two tried faults leave at least one
  }
}
