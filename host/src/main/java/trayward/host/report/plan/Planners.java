package trayward.host.report.plan;

import java.util.List;
import java.util.Optional;

/** All planners. Immutable; safe on any thread. */
public final class Planners {

  private static final List<Planner> ALL =
      List.of(new AirPlan(), new HeatPlan(), new MixPlan(), new ExposurePlan(), new BathPlan());

  private Planners() {}

  /** All of them, as they are listed. */
  public static List<Planner> all() {
    return ALL;
  }

  /** A planner by its name. */
  public static Optional<Planner> of(String name) {
    return ALL.stream().filter(p -> p.name().equals(name)).findFirst();
  }
}
