package trayward.host.app.goals;

import java.util.Locale;

/** What is measured of a session; more is worse. Everything on the true bath. */
enum Measure {
  /** Time from the first permitted heat into the band to stay, over the least possible. */
  HEAT_UP("heat-up", "x bound", 3),
  /** Highest above set between first heat and the pour. */
  OVERSHOOT("overshoot", "K", 3),
  /** As the heat-up, after 0.3 L of 20 °C. */
  POUR("pour", "x bound", 3),
  /** As the heat-up, after a sheet of 210 J/K and 15 °C. */
  SHEET("cold sheet", "x bound", 3),
  /** Peak to peak over the last 600 s before the pour. */
  RIPPLE("ripple", "K", 3),
  /** Mean less set over the hour before the pour, without its sign. */
  STANDING_ERROR("standing error", "K", 4),
  /** Highest above set from the first covering on. */
  COVERED("covered overshoot", "K", 3),
  /** What {@link #COVERED} is at the least: heat off at the moment of covering. */
  COVERED_BOUND("its bound", "K", 3),
  /** Closings and openings of the heater relay in the hour before the pour. */
  RELAY("relay", "/h", 0),
  /** How often the interlock held heat off to look closer. */
  LOOKS("looks", "", 0),
  /** Trips: none of these trays has a fault. */
  TRIPS("trips", "", 0);

  private final String words;
  private final String unit;
  private final int decimals;

  Measure(String words, String unit, int decimals) {
    this.words = words;
    this.unit = unit;
    this.decimals = decimals;
  }

  /** For a table's first column. */
  String words() {
    return unit.isEmpty() ? words : words + ", " + unit;
  }

  /** For a key of JSON. */
  String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Whether it is a ratio to the plant's own bound. */
  boolean ratio() {
    return this == HEAT_UP || this == POUR || this == SHEET;
  }

  /** Whether it tells of the bath, and not of the relay or the interlock. */
  boolean ofTheBath() {
    return switch (this) {
      case RELAY, LOOKS, TRIPS -> false;
      case HEAT_UP, OVERSHOOT, POUR, SHEET, RIPPLE, STANDING_ERROR, COVERED, COVERED_BOUND -> true;
    };
  }

  /** A value for a person; what never came to an end is no number. */
  String told(double value) {
    return Double.isFinite(value)
        ? String.format(Locale.ROOT, "%." + decimals + "f", value)
        : "never";
  }
}
