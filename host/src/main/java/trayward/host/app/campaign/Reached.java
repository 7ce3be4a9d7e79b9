package trayward.host.app.campaign;

/** The state of the interlock a session is led to before its fault begins. */
enum Reached {
  OFF,
  PROVING,
  PURGING,
  READY,
  HEATING,
  HOLDING,
  AFTER_RUN,
  LOCKOUT
}
