package trayward.controller.regulate;

/**
 * What a regulator sees in one scan.
 *
 * @param elapsedS time since the last scan, s
 * @param setC set temperature, °C
 * @param bathC bath temperature to control on, °C; NaN where none is believable
 * @param bathTakenNanos when that was true; a changed value marks a new sample
 * @param plateC plate temperature, °C; NaN where there is none
 * @param plateTakenNanos when that was true
 * @param heatAllowed whether the interlock permitted heat in the last scan
 * @param heating whether heat was commanded from the last scan to this one
 * @param nowNanos monotonic time of this scan
 */
public record RegulatorInput(
    double elapsedS,
    double setC,
    double bathC,
    long bathTakenNanos,
    double plateC,
    long plateTakenNanos,
    boolean heatAllowed,
    boolean heating,
    long nowNanos) {}
