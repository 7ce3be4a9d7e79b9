package trayward.controller.app;

import org.jspecify.annotations.Nullable;
import trayward.controller.scan.Snapshot;

/**
 * One tenth of a second of a rehearsal: the plant's truth beside the controller's last snapshot.
 *
 * @param tS plant time, s
 * @param bathTrueC true bath temperature, °C
 * @param plateTrueC true plate temperature, °C
 * @param snapshot the controller's last scan; null before the first
 * @param setC set temperature as asked for, °C
 * @param state state of the interlock, or NO_POWER or STALLED
 * @param heaterContact the heater relay's contact
 * @param safetyContact the safety relay's contact
 * @param watchdogLine level of the watchdog line
 * @param heatW true heater power, W
 * @param fanRpm the tachometer as read, 1/min
 * @param flowTrueM3PerH true flow, m³/h
 * @param airflowTrue the true switch: flow above half of rated
 * @param liquidL liquid in the tray, L
 * @param evaporatedMl water evaporated so far, mL
 */
public record RehearsalRow(
    double tS,
    double bathTrueC,
    double plateTrueC,
    @Nullable Snapshot snapshot,
    double setC,
    String state,
    boolean heaterContact,
    boolean safetyContact,
    boolean watchdogLine,
    double heatW,
    double fanRpm,
    double flowTrueM3PerH,
    boolean airflowTrue,
    double liquidL,
    double evaporatedMl) {}
