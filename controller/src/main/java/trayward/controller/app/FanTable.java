package trayward.controller.app;

import trayward.controller.quantity.Range;
import trayward.controller.sim.PlantParameters;

/**
 * The {@code [fan]} table.
 *
 * @param flowM3PerH rated flow, m³/h
 * @param rpm rated speed, 1/min
 * @param spinUpS time to full speed, s
 * @param spinDownS time to rest, s
 * @param airflowSwitch an airflow or differential-pressure switch is fitted: a proof of air
 *     movement
 * @param tachometer a tachometer is fitted: a proof of the fan only
 */
public record FanTable(
    double flowM3PerH,
    double rpm,
    double spinUpS,
    double spinDownS,
    boolean airflowSwitch,
    boolean tachometer) {

  static FanTable read(Section fan) throws ConfigRefused {
    PlantParameters d = PlantParameters.REFERENCE;
    FanTable table =
        new FanTable(
            fan.number("flow_m3_per_h", d.flowM3PerH(), new Range(1, 5000, "m³/h")),
            fan.number("rpm", d.rpm(), new Range(100, 20_000, "1/min")),
            // A fan slower than this could not be proven within the time SR-02 gives it.
            fan.number("spin_up_s", d.spinUpS(), new Range(0.1, 15, "s")),
            // The look of SR-03 lasts at most 15 s, so a longer spin-down could never be seen.
            fan.number("spin_down_s", d.spinDownS(), new Range(0.1, 13, "s")),
            fan.flag("airflow_switch", true),
            fan.flag("tachometer", true));
    if (!table.airflowSwitch()) {
      throw fan.refuse(
          "airflow_switch",
          "false",
          "true: SR-02 asks for a proof of air movement, not of turning");
    }
    fan.done();
    return table;
  }
}
