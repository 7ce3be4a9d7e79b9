package trayward.host.app.campaign;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The first finding of each kind; bounded by the kinds. Mutable; one thread. */
final class Findings {

  private final Map<Hazard, Finding> first = new EnumMap<>(Hazard.class);

  void add(Hazard hazard, double tS, String detail) {
    first.putIfAbsent(hazard, new Finding(hazard, tS, detail));
  }

  List<Finding> all() {
    return List.copyOf(first.values());
  }
}
