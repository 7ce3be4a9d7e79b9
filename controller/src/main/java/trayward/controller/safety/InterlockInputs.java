package trayward.controller.safety;

import java.util.Optional;
import java.util.Set;
import trayward.controller.event.TripCause;

/**
 * Everything the interlock judges on in one scan. Immutable.
 *
 * @param elapsedMs time since the scan before, ms
 * @param lateMs how late this scan came after it was due, ms
 * @param airflow the airflow switch
 * @param tachometer the fan's tachometer
 * @param bath the bath probe
 * @param secondBath the second bath probe
 * @param plate the plate probe
 * @param setC set temperature, °C
 * @param stopCircuitClosed the normally closed stop circuit is whole
 * @param linesPresent the inputs answer at all: tells a held stop from a dead input board
 * @param requests what persons asked since the last scan
 * @param atTray whether the asker of a reset stands at the tray
 * @param storeWritable the controller's record can be written
 * @param hostSilentMs time since the host's heartbeat changed, ms; 0 where none is required
 * @param contactTest which relay the contact test wants closed alone in a purge (SR-26)
 * @param contactsSound both contacts have been seen to open in this purge
 * @param looking heat is to be held off for a look at where it goes
 * @param level what is known of the liquid
 * @param startUnconfirmed a start asked for in this scan needs a confirmation it does not carry
 *     (SR-23)
 * @param findings what the model-based detectors judge to be present
 */
public record InterlockInputs(
    int elapsedMs,
    int lateMs,
    Proof airflow,
    Proof tachometer,
    Temperature bath,
    Temperature secondBath,
    Temperature plate,
    double setC,
    boolean stopCircuitClosed,
    boolean linesPresent,
    Set<Request> requests,
    boolean atTray,
    boolean storeWritable,
    int hostSilentMs,
    Optional<Relay> contactTest,
    boolean contactsSound,
    boolean looking,
    Level level,
    boolean startUnconfirmed,
    Set<TripCause> findings) {

  /** SR-02: all configured proofs at once. */
  public boolean airProven() {
    boolean some = airflow == Proof.PRESENT || tachometer == Proof.PRESENT;
    return some && airflow.proves() && tachometer.proves();
  }

  boolean asks(Request request) {
    return requests.contains(request);
  }

  /** Stop by a request or by the circuit. */
  boolean stop() {
    return !stopCircuitClosed || asks(Request.STOP);
  }
}
