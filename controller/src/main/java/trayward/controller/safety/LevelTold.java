package trayward.controller.safety;

import trayward.controller.quantity.Range;

/** What a person says of the liquid in the tray (SR-28). Immutable. */
public sealed interface LevelTold {

  /** From a splash to more than any tray here holds, L. */
  Range POURED_L = new Range(0.001, 20, "L");

  /** From a film of liquid to the largest trays on a bench, L. */
  Range LEVEL_L = new Range(0.05, 20, "L");

  /**
   * Liquid was poured in.
   *
   * @param litres how much, L
   */
  record Poured(double litres) implements LevelTold {}

  /**
   * The tray was looked at and holds this much.
   *
   * @param litres how much, L
   */
  record Holds(double litres) implements LevelTold {}

  /** The tray was looked at and is as full as was said before. */
  record AsSaid() implements LevelTold {}

  /** Whether what is said can be. */
  default boolean believable() {
    if (this instanceof Poured poured) {
      return POURED_L.contains(poured.litres());
    }
    return !(this instanceof Holds holds) || LEVEL_L.contains(holds.litres());
  }

  /** What would have been believed, for a refusal. */
  default String accepted() {
    return (this instanceof Poured ? POURED_L : LEVEL_L).words();
  }
}
