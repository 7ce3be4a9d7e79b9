package trayward.controller.safety;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import trayward.controller.quantity.Range;

/** The limits in force. Immutable. */
public final class Limits {

  /** Every limit at its default. */
  public static final Limits STANDARD = new Limits(Map.of());

  private final EnumMap<Limit, Double> values = new EnumMap<>(Limit.class);
  private final EnumMap<Limit, Integer> milliseconds = new EnumMap<>(Limit.class);

  /**
   * Defaults with some replaced.
   *
   * @throws IllegalArgumentException where a value is outside of its range (SR-19)
   */
  public Limits(Map<Limit, Double> changed) {
    for (Limit limit : Limit.values()) {
      double value = changed.getOrDefault(limit, limit.standard());
      if (!limit.range().contains(value)) {
        throw new IllegalArgumentException(
            limit.key() + " must be " + limit.range().words() + ", not " + value);
      }
      values.put(limit, value);
      milliseconds.put(limit, milliseconds(limit, value));
    }
  }

  /** These limits with one replaced. */
  public Limits with(Limit limit, double value) {
    EnumMap<Limit, Double> map = new EnumMap<>(values);
    map.put(limit, value);
    return new Limits(map);
  }

  /** Least distance of a set temperature from the hard limit, K: what a regulator may overshoot. */
  private static final double UNDER_HARD_K = 2;

  /**
   * Least distance of the regulator's ceiling from the dry-tray trip, K: a wet plate's overshoot.
   */
  private static final double UNDER_DRY_K = 4;

  /**
   * Accepted set temperatures, °C: as set, and always under the hard limit, however low that is.
   *
   * @throws IllegalArgumentException where that leaves nothing; the reader of settings refuses it
   */
  public Range setRange() {
    return new Range(get(Limit.SET_MIN_C), highestSetC(), "°C");
  }

  /** Whether any set temperature is left between the limits. */
  public boolean settable() {
    return get(Limit.SET_MIN_C) <= highestSetC();
  }

  private double highestSetC() {
    return Math.min(get(Limit.SET_MAX_C), get(Limit.BATH_HARD_C) - UNDER_HARD_K);
  }

  /** Plate temperature the regulator never asks for, °C: as set, and always under the trips. */
  public double plateCeilingC() {
    double trip = Math.min(get(Limit.PLATE_DRY_C), get(Limit.PLATE_HARD_C));
    return Math.min(get(Limit.PLATE_ASK_C), trip - UNDER_DRY_K);
  }

  /** The value in the limit's own unit. */
  public double get(Limit limit) {
    return Objects.requireNonNull(values.get(limit), limit.key());
  }

  /** A limit given in seconds or minutes, as whole milliseconds. */
  public int ms(Limit limit) {
    return Objects.requireNonNull(milliseconds.get(limit), limit.key());
  }

  private static int milliseconds(Limit limit, double value) {
    double perUnit = limit.unit().equals("min") ? 60_000 : 1_000;
    return (int) Math.round(value * perUnit);
  }
}
