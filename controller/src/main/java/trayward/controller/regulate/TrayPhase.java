package trayward.controller.regulate;

/** What the regulator of a tray is doing. */
enum TrayPhase {
  /** Full heat, as far as the plate's ceiling lets it. */
  FULL,
  /** No heat: what the plate has stored brings the bath to its set temperature. */
  COAST,
  /** A cascade around the plate temperature that holds the bath. */
  HOLD
}
