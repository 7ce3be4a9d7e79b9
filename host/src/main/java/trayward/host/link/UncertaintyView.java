package trayward.host.link;

/**
 * How far each reading may be from the truth, K; NaN where no valid reading stands.
 *
 * @param bathK the bath probe
 * @param secondBathK the second bath probe
 * @param plateK the plate probe
 * @param recordReadable false where the record of calibrations could not be believed
 */
public record UncertaintyView(
    double bathK, double secondBathK, double plateK, boolean recordReadable) {}
