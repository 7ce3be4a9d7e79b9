package trayward.host.bath;

/** Something that happens to what is in the tray. Immutable. */
public sealed interface BathChange {

  /** A jug or syringe is read to this share of what it holds: common practice. */
  double JUG_SHARE = 0.02;

  /**
   * Something is poured in.
   *
   * @param what what
   * @param millilitres how much
   */
  record Poured(Solution what, double millilitres) implements BathChange {}

  /**
   * Used developer of an earlier bath is poured in.
   *
   * @param from what that bath was when it was kept
   * @param millilitres how much
   */
  record CarriedOver(BathContents from, double millilitres) implements BathChange {}

  /**
   * A sheet is developed and drained.
   *
   * @param areaM2 its area, m²
   * @param use what that does
   */
  record Printed(double areaM2, PrintUse use) implements BathChange {}

  /**
   * Water goes as vapour while the bath stands; nothing else does.
   *
   * @param millilitres how much, with its doubt
   * @param hotS how long it was hot meanwhile, seconds
   */
  record Evaporated(Amount millilitres, double hotS) implements BathChange {}

  /**
   * A person reads the level. What differs from the estimate is taken as water that went or came as
   * vapour: everything else was said.
   *
   * @param litres what the tray holds, with its doubt
   */
  record LevelRead(Amount litres) implements BathChange {}

  /**
   * Some of it is poured away.
   *
   * @param millilitres how much
   */
  record PouredAway(double millilitres) implements BathChange {}
}
