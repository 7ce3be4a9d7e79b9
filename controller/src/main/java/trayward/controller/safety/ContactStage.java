package trayward.controller.safety;

/** Stages of the contact test, in their order. */
enum ContactStage {
  /** Waiting for a course straight enough to see a bend in it. */
  CALMING,
  /** The heater relay is closed alone. */
  HEATER_ALONE,
  /** Both are open again; what arrived is still on its way to the probe. */
  HEATER_AFTER,
  /** The safety relay is closed alone. */
  SAFETY_ALONE,
  /** Both are open again. */
  SAFETY_AFTER,
  /** No heat came through either contact. */
  SOUND,
  /** Heat came while the safety relay was closed alone. */
  HEATER_WELDED,
  /** Heat came while the heater relay was closed alone. */
  SAFETY_WELDED
}
