package trayward.controller.keep;

/** What was found where the calibrations are kept. */
sealed interface CalibrationLoad {

  /** What is on record; nothing on a first run. */
  record Loaded(CalibrationBook book) implements CalibrationLoad {}

  /** Something that is not what was written: no calibration is applied. */
  record Unreadable(String why) implements CalibrationLoad {}
}
