package trayward.controller.safety;

/** What is known of the liquid in the tray against what a person said is in it (SR-28). */
public enum Level {
  /** As said, as far as can be told. */
  WELL,
  /** So much less that water should be added: a warning. */
  LOW,
  /** So much less that heat waits until a person confirms the level. */
  UNSURE
}
