package trayward.controller.scan;

import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.Limits;

/**
 * What a scan needs to know of the installation. Immutable.
 *
 * @param limits limits of the interlock
 * @param ratedRpm rated speed of the fan, 1/min
 * @param spinDownS time the fan takes to come to rest, s
 * @param airflowFitted an airflow switch is configured
 * @param tachometerFitted a tachometer is configured
 * @param secondBathFitted a second bath probe is configured
 * @param plateFitted a plate probe is configured
 * @param startSetC set temperature at power-up, °C
 * @param cycleS cycle of the heater relay, s
 * @param minPulseS shortest pulse or pause of it, s
 * @param hostRequired whether heat needs a living host (SR-16)
 * @param model what is believed of the tray, for the watch over heat
 * @param room what is believed of the room
 * @param believed what the regulator begins with: what was learned of the tray, or the declaration
 */
public record ScanSettings(
    Limits limits,
    double ratedRpm,
    double spinDownS,
    boolean airflowFitted,
    boolean tachometerFitted,
    boolean secondBathFitted,
    boolean plateFitted,
    double startSetC,
    double cycleS,
    double minPulseS,
    boolean hostRequired,
    TrayModel model,
    RoomModel room,
    TrayModel believed) {

  /** Settings of a tray of which nothing is learned. */
  public ScanSettings(
      Limits limits,
      double ratedRpm,
      double spinDownS,
      boolean airflowFitted,
      boolean tachometerFitted,
      boolean secondBathFitted,
      boolean plateFitted,
      double startSetC,
      double cycleS,
      double minPulseS,
      boolean hostRequired,
      TrayModel model,
      RoomModel room) {
    this(
        limits,
        ratedRpm,
        spinDownS,
        airflowFitted,
        tachometerFitted,
        secondBathFitted,
        plateFitted,
        startSetC,
        cycleS,
        minPulseS,
        hostRequired,
        model,
        room,
        model);
  }
}
