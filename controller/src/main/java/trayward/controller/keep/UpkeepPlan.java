package trayward.controller.keep;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/** The intervals in force (SR-23). Immutable. */
public final class UpkeepPlan {

  /** Every interval at its default. */
  public static final UpkeepPlan STANDARD = new UpkeepPlan(Map.of(), UpkeepItem.CARTRIDGE_HOURS);

  private final EnumMap<UpkeepItem, Double> days = new EnumMap<>(UpkeepItem.class);
  private final double cartridgeHours;

  /**
   * Defaults with some replaced.
   *
   * @param changedDays intervals, days
   * @param cartridgeHours hours in vapour that a cartridge may serve, h
   */
  public UpkeepPlan(Map<UpkeepItem, Double> changedDays, double cartridgeHours) {
    for (UpkeepItem item : UpkeepItem.values()) {
      days.put(item, changedDays.getOrDefault(item, item.standardDays()));
    }
    this.cartridgeHours = cartridgeHours;
  }

  /** Interval of an item, whole days. */
  public long days(UpkeepItem item) {
    return Math.round(Objects.requireNonNull(days.get(item), item.key()));
  }

  /** Hours in vapour that a cartridge may serve, h. */
  public double cartridgeHours() {
    return cartridgeHours;
  }
}
