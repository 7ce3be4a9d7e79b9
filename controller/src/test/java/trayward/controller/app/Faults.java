package trayward.controller.app;

import java.util.ArrayList;
import java.util.List;

/** The fault kinds of the scenario contract, written out from its words. */
final class Faults {

  private static final List<String> OF_A_PROBE =
      List.of("absent", "crc", "power-on-value", "all-zero", "frozen", "offset", "out-of-liquid");

  static final List<String> KINDS = kinds();

  private Faults() {}

  private static List<String> kinds() {
    List<String> kinds =
        new ArrayList<>(
            List.of(
                "fan-stops",
                "fan-slows",
                "duct-blocked",
                "airflow-stuck-on",
                "airflow-stuck-off",
                "tach-stuck",
                "plate-probe-detached",
                "relay-welded",
                "safety-relay-welded",
                "heater-open",
                "breaker-tripped",
                "tray-dry",
                "tray-half-empty",
                "host-lost",
                "scan-stall",
                "wall-clock-step",
                "power-loss"));
    for (String probe : List.of("probe-", "second-probe-", "plate-probe-")) {
      for (String fault : OF_A_PROBE) {
        kinds.add(probe + fault);
      }
    }
    return List.copyOf(kinds);
  }

  /** Whether the fault has a beginning and an end. */
  static boolean lasts(String kind) {
    return !kind.equals("scan-stall") && !kind.equals("wall-clock-step");
  }

  /** One fault from {@code atS} for a minute. */
  static String toml(String kind, double atS) {
    String size =
        switch (kind) {
          case "fan-slows" -> "rpm=900\n";
          case "probe-offset", "second-probe-offset", "plate-probe-offset" -> "kelvin=3\n";
          case "scan-stall", "wall-clock-step" -> "seconds=2\n";
          default -> "";
        };
    return "[[fault]]\nt_s=%s\nkind='%s'\n%s%s"
        .formatted(atS, kind, size, lasts(kind) ? "duration_s=60\n" : "");
  }
}
