package trayward.host.link;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The host's way to the controller, whatever lies between. Safe on any thread. */
public interface TrayLink {

  /** The newest status; empty before the first, or when it is too old to be now. */
  Optional<TrayStatus> latest();

  /** Sends a command and waits for the scan that answers it, at most two seconds. */
  LinkAnswer send(Command command);

  /**
   * Sends a start; {@link #send} sends one that is not confirmed.
   *
   * @param confirmed whether the person has read what is overdue and starts all the same
   */
  LinkAnswer start(boolean confirmed);

  /** Asks buzzer and lamp for a moment and waits for no answer; lost where the line is down. */
  default void call(Call call) {}

  /** Silences one alarm for two minutes; the others go on, and so does the lamp. */
  default LinkAnswer silence(String cause) {
    return new LinkAnswer.Refused("this link carries no silence");
  }

  /** The due dates of maintenance. */
  UpkeepView upkeep();

  /**
   * The durable record of alarms, at most so many of its newest steps; empty where the link cannot
   * carry it.
   */
  default Optional<AlarmHistory> alarmHistory(int most) {
    return Optional.empty();
  }

  /** Records that a part was looked after today; refused where there is no such part. */
  LinkAnswer upkeepDone(String item);

  /** The probes and what is known of each; none where the link cannot carry it. */
  default ProbesView probes() {
    return ProbesView.NONE;
  }

  /** A probe hangs in melting ice. */
  default LinkAnswer calibrateIce(String role) {
    return new LinkAnswer.Refused("this link carries no calibration");
  }

  /** A probe hangs beside a thermometer that shows this, °C, within its uncertainty, k = 2, K. */
  default LinkAnswer calibrateReference(String role, double celsius, double statedK) {
    return new LinkAnswer.Refused("this link carries no calibration");
  }

  /** Forgets what is known of a probe. */
  default LinkAnswer forgetCalibration(String role) {
    return new LinkAnswer.Refused("this link carries no calibration");
  }

  /** The warm-up just learned, or the next one, is done with exactly so much in the tray, L. */
  default TrayCalibrated calibrateTray(double litres) {
    return new TrayCalibrated(false, "this link carries no calibration");
  }

  /**
   * What became of a calibration of the tray.
   *
   * @param taken whether it was taken
   * @param words what became of it
   */
  record TrayCalibrated(boolean taken, String words) {}

  /** Sends a set temperature, °C, likewise. */
  LinkAnswer setTemperature(double celsius);

  /** Says that water or developer was poured in, L. */
  LinkAnswer topUp(double litres);

  /** Says that a person looked at the tray: how much it holds, L, or empty for "as said". */
  LinkAnswer confirmLevel(OptionalDouble litres);

  /** Takes the events since the last call, oldest first; for one reader. */
  List<LinkEvent> takeEvents();

  /** Says that the host lives; to be called about once a second. */
  void beat();

  /** Whether the tray at the other end is simulated. */
  boolean simulated();

  /** Timing of the scan loop, where the link can tell. */
  Optional<ScanLateness> lateness();

  /**
   * How late scans came.
   *
   * @param scans scans counted
   * @param p50Ms median, ms
   * @param p999Ms 99.9th percentile, ms
   * @param maxMs greatest, ms
   */
  record ScanLateness(long scans, double p50Ms, double p999Ms, double maxMs) {}
}
