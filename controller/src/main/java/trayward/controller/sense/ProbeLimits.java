package trayward.controller.sense;

/**
 * What a probe may plausibly say.
 *
 * @param minC lowest believable temperature, °C
 * @param maxC highest believable temperature, °C
 * @param maxRateKPerS fastest believable change between two readings, K/s
 * @param staleNanos age beyond which a reading is stale, nanoseconds
 */
public record ProbeLimits(double minC, double maxC, double maxRateKPerS, long staleNanos) {}
