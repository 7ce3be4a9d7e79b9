package trayward.controller.scan;

import java.util.Optional;
import trayward.controller.regulate.TrayLesson;

/**
 * What is known of the tray beside its level. Immutable.
 *
 * @param lesson what the last warm-up taught, or teaches
 * @param highestHoldC highest bath temperature the heater can hold, °C
 * @param outOfReach whether the set temperature is above that
 */
public record TrayView(Optional<TrayLesson> lesson, double highestHoldC, boolean outOfReach) {}
