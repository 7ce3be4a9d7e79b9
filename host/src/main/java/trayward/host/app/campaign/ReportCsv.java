package trayward.host.app.campaign;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** {@code campaign.csv}: a row for each kind of fault. Stateless. */
final class ReportCsv {

  private static final String HEADER =
      "fault,sessions,mattered,detected,missed,misnamed,other_first,detected_by,detect_p50_s,"
          + "detect_p99_s,detect_max_s,max_bath_c,max_plate_c";

  private ReportCsv() {}

  static String of(Tally tally) {
    StringBuilder out = new StringBuilder(HEADER);
    for (Reached state : Reached.values()) {
      out.append(",in_").append(state.name().toLowerCase(Locale.ROOT));
    }
    out.append(",in_other\n");
    tally.faults.forEach((kind, fault) -> row(out, kind, fault));
    return out.toString();
  }

  private static void row(StringBuilder out, FaultKind kind, FaultTally f) {
    out.append(kind.words()).append(',').append(f.sessions).append(',').append(f.needed);
    out.append(',').append(f.detected()).append(',').append(f.missed).append(',');
    out.append(f.misnamed).append(',').append(f.preempted).append(',');
    out.append(
        f.detectedBy.entrySet().stream()
            .map(e -> e.getKey() + ":" + e.getValue())
            .collect(Collectors.joining(" ")));
    for (double percent : new double[] {50, 99, 100}) {
      number(out, f.detectS(percent));
    }
    number(out, f.bathC);
    number(out, f.plateC);
    int named = 0;
    for (Reached state : Reached.values()) {
      int count = f.states.getOrDefault(state.name(), 0);
      named += count;
      out.append(',').append(count);
    }
    out.append(',').append(f.sessions - named).append('\n');
  }

  private static void number(StringBuilder out, double value) {
    out.append(',');
    if (Double.isFinite(value)) {
      out.append(String.format(Locale.ROOT, "%.1f", value));
    }
  }

  /** A number for a table; a dash for none. */
  static String words(double value) {
    return Double.isFinite(value) ? String.format(Locale.ROOT, "%.1f", value) : "–";
  }

  /** The names of the states, in order. */
  static String states(String between) {
    return Arrays.stream(Reached.values()).map(Enum::name).collect(Collectors.joining(between));
  }
}
