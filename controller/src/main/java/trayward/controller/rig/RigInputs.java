package trayward.controller.rig;

import trayward.controller.port.Contact;
import trayward.controller.port.LineReader;
import trayward.controller.port.LineReadings;
import trayward.controller.port.ProbeReader;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;

/**
 * Inputs of the bench rig. The rig shows that it lives by a growing {@code tick}; when that stands
 * still for two seconds every input is absent, the probes too. Scan thread only.
 */
public final class RigInputs implements LineReader, ProbeReader {

  /** A tick this old means the rig has stopped. */
  private static final long SILENCE_NANOS = 2_000_000_000L;

  private final RigFolder folder;
  private final ProbeReader probes;
  private double tick = Double.NaN;
  private long tickNanos;
  private boolean present;

  /**
   * Inputs from a folder.
   *
   * @param folder where the line files are
   * @param probes reads the probe files
   */
  public RigInputs(RigFolder folder, ProbeReader probes) {
    this.folder = folder;
    this.probes = probes;
  }

  @Override
  public LineReadings read(long nowNanos) {
    double now = folder.number("tick");
    if (!Double.isNaN(now) && now != tick) {
      tick = now;
      tickNanos = nowNanos;
    }
    present = !Double.isNaN(tick) && nowNanos - tickNanos < SILENCE_NANOS;
    if (!present) {
      return LineReadings.ABSENT;
    }
    double rpm = folder.number("fan_rpm");
    return new LineReadings(
        true,
        folder.on("airflow"),
        Double.isFinite(rpm) && rpm > 0 ? rpm : 0,
        folder.on("stop_button"),
        folder.on("reset_button"),
        folder.on("presence_button"),
        folder.on("pedal"),
        folder.on("start_button"),
        contact("heater_contact"),
        contact("safety_contact"));
  }

  /** Read-back of a contact: a missing file, or one that holds no number, is not wired. */
  private Contact contact(String line) {
    double value = folder.number(line);
    return Double.isNaN(value) ? Contact.NOT_WIRED : value >= 0.5 ? Contact.CLOSED : Contact.OPEN;
  }

  @Override
  public RawReading latest(ProbeRole role, long nowNanos) {
    return present
        ? probes.latest(role, nowNanos)
        : RawReading.failed(RawReading.Kind.ABSENT, nowNanos);
  }
}
