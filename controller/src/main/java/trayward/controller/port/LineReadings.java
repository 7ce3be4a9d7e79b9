package trayward.controller.port;

/**
 * All digital inputs as one scan found them.
 *
 * @param present false where nothing answers at all; every other field then reads as absent
 * @param airflow the airflow or differential-pressure switch is closed
 * @param fanRpm tachometer, revolutions per minute; 0 where silent
 * @param stopCircuitClosed the normally closed stop circuit is whole: nobody presses stop
 * @param resetButton the reset button at the tray is down
 * @param presenceButton the presence button is down
 * @param pedal the foot switch is down
 * @param startButton the start button at the tray is down; never where none is wired
 * @param heaterContact read-back of the heater relay's contact, where one is wired
 * @param safetyContact the same of the safety relay
 */
public record LineReadings(
    boolean present,
    boolean airflow,
    double fanRpm,
    boolean stopCircuitClosed,
    boolean resetButton,
    boolean presenceButton,
    boolean pedal,
    boolean startButton,
    Contact heaterContact,
    Contact safetyContact) {

  /** Readings of an installation without a start button and read-back of its contacts. */
  public LineReadings(
      boolean present,
      boolean airflow,
      double fanRpm,
      boolean stopCircuitClosed,
      boolean resetButton,
      boolean presenceButton,
      boolean pedal) {
    this(
        present,
        airflow,
        fanRpm,
        stopCircuitClosed,
        resetButton,
        presenceButton,
        pedal,
        false,
        Contact.NOT_WIRED,
        Contact.NOT_WIRED);
  }

  /** Nothing answers: no air, and stop counts as pressed. */
  public static final LineReadings ABSENT =
      new LineReadings(false, false, 0, false, false, false, false);
}
