package trayward.host.app.campaign;

/** The part that is broken: one part has one fault at a time. */
enum Part {
  FAN,
  DUCT,
  AIRFLOW_SWITCH,
  TACHOMETER,
  BATH_PROBE,
  SECOND_PROBE,
  PLATE_PROBE,
  RELAY,
  SAFETY_RELAY,
  HEATER,
  TRAY,
  HOST,
  PROGRAM,
  CLOCK,
  MAINS
}
