package trayward.controller.app;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Which of several probes a person warms in the hand: the one that has risen most above its start,
 * clearly more than any other, for some seconds. A value; {@link #next} returns the following one.
 * Pure.
 *
 * @param starts first reading of each probe by its name, °C
 * @param rises how far each is above that now, K
 * @param leader the one that leads clearly
 * @param leadsSinceNanos since when it does
 * @param nowNanos time of the newest readings
 */
public record WarmProbe(
    Map<String, Double> starts,
    Map<String, Double> rises,
    Optional<String> leader,
    long leadsSinceNanos,
    long nowNanos) {

  /** A hand warms a probe by several kelvin within a minute; air of a room swings by tenths. */
  public static final double LEAST_K = 1;

  /** Twice as far as the next: a second probe beside the hand is warmed too, but less. */
  private static final double TIMES = 2;

  /** Two conversions at the least must agree. */
  private static final long LEADS_NANOS = 2_000_000_000L;

  /** Before anything was read. */
  public static final WarmProbe START =
      new WarmProbe(Map.of(), Map.of(), Optional.empty(), 0, Long.MIN_VALUE);

  /** The probe that was found. */
  public record Named(String name, double riseK, double nextK) {}

  /**
   * After more readings.
   *
   * @param celsius valid readings only, by name, °C; one that is missing keeps its last rise
   * @param now monotonic time, ns
   */
  public WarmProbe next(Map<String, Double> celsius, long now) {
    Map<String, Double> first = new HashMap<>(starts);
    Map<String, Double> risen = new HashMap<>(rises);
    celsius.forEach(
        (name, value) -> {
          first.putIfAbsent(name, value);
          risen.put(name, value - first.getOrDefault(name, value));
        });
    Optional<String> leads = leading(risen);
    long since = leads.isPresent() && leads.equals(leader) ? leadsSinceNanos : now;
    return new WarmProbe(Map.copyOf(first), Map.copyOf(risen), leads, since, now);
  }

  private static Optional<String> leading(Map<String, Double> risen) {
    return risen.keySet().stream().filter(name -> clearly(name, risen)).findFirst();
  }

  private static boolean clearly(String name, Map<String, Double> risen) {
    double rise = risen.getOrDefault(name, 0.0);
    return rise >= LEAST_K && rise >= TIMES * nextTo(name, risen);
  }

  /** The highest rise among the others, K; 0 where none rose. */
  private static double nextTo(String name, Map<String, Double> risen) {
    return risen.entrySet().stream()
        .filter(e -> !Objects.equals(e.getKey(), name))
        .mapToDouble(Map.Entry::getValue)
        .reduce(0, Math::max);
  }

  /** The probe in the hand, once it is sure. */
  public Optional<Named> found() {
    return leader
        .filter(name -> nowNanos - leadsSinceNanos >= LEADS_NANOS)
        .map(name -> new Named(name, rises.getOrDefault(name, 0.0), nextTo(name, rises)));
  }
}
