package trayward.controller.sim;

/** Puts a fault into, or takes it out of, the part of the tray it belongs to. */
final class SimFaults {

  private SimFaults() {}

  static void apply(
      SimFault kind,
      boolean on,
      double value,
      SimulatedTray tray,
      SimFan fan,
      SimRelays relays,
      Plant plant,
      SimProbe[] probes) {
    switch (kind) {
      case FAN_STOPS -> fan.dead(on);
      case FAN_SLOWS -> fan.slow(on ? value : Double.NaN);
      case DUCT_BLOCKED -> fan.ductBlocked(on);
      case AIRFLOW_STUCK_ON -> fan.airflowStuckOn(on);
      case AIRFLOW_STUCK_OFF -> fan.airflowStuckOff(on);
      case TACH_STUCK -> fan.tachometerStuck(on);
      case RELAY_WELDED -> relays.heaterWelded(on);
      case SAFETY_RELAY_WELDED -> relays.safetyWelded(on);
      case HEATER_OPEN, BREAKER_TRIPPED -> relays.open(on);
      case TRAY_DRY -> plant.dry(on);
      case TRAY_HALF_EMPTY -> {
        if (on) {
          plant.halve();
        } else {
          plant.refill(plant.liquidL() * 2);
        }
      }
      case POWER_LOSS -> tray.powered(!on);
      case PROBE_ABSENT,
          PROBE_CRC,
          PROBE_POWER_ON,
          PROBE_ALL_ZERO,
          PROBE_FROZEN,
          PROBE_OFFSET,
          PROBE_OUT,
          SECOND_ABSENT,
          SECOND_CRC,
          SECOND_POWER_ON,
          SECOND_ALL_ZERO,
          SECOND_FROZEN,
          SECOND_OFFSET,
          SECOND_OUT,
          PLATE_ABSENT,
          PLATE_CRC,
          PLATE_POWER_ON,
          PLATE_ALL_ZERO,
          PLATE_FROZEN,
          PLATE_OFFSET,
          PLATE_OUT,
          PLATE_DETACHED ->
          probes[SimulatedTray.index(kind.role())].fault(
              on ? kind.probeFault() : ProbeFault.NONE, value);
    }
  }
}
