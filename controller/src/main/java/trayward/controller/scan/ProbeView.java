package trayward.controller.scan;

import trayward.controller.calibrate.Correction;
import trayward.controller.calibrate.Stand;
import trayward.controller.port.RawReading;
import trayward.controller.sense.Reading;

/**
 * One probe as a scan saw it, before and after its correction. Immutable.
 *
 * @param fitted whether it is configured
 * @param raw what it said
 * @param reading the same, corrected and classified
 * @param correction what is applied
 * @param stand how it has stood of late, uncorrected
 */
public record ProbeView(
    boolean fitted, RawReading raw, Reading reading, Correction correction, Stand stand) {}
