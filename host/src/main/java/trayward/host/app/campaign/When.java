package trayward.host.app.campaign;

/** Under which circumstance a fault may explain a cause. */
enum When {
  /** Always. */
  ALWAYS,
  /** The fault makes the reading too high. */
  READS_HIGH,
  /** The fault makes the reading too low. */
  READS_LOW,
  /** Only where no plate probe is wired. */
  NO_PLATE_PROBE,
  /** Only where two bath probes are wired. */
  TWO_BATH_PROBES;

  boolean holds(FaultPlan fault, SessionPlan plan) {
    return switch (this) {
      case ALWAYS -> true;
      case READS_HIGH -> fault.size() > 0;
      case READS_LOW -> fault.size() < 0;
      case NO_PLATE_PROBE -> !plan.plateFitted();
      case TWO_BATH_PROBES -> plan.secondFitted();
    };
  }
}
