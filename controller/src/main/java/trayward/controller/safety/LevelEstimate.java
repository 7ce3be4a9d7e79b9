package trayward.controller.safety;

/**
 * What is thought of the liquid in the tray (SR-28). Immutable.
 *
 * @param level in a word
 * @param litres best estimate, L
 * @param lowL least that it may be, L
 * @param highL most that it may be, L
 * @param addL water to add so that the tray is as full as was said, L; 0 where none is missing
 */
public record LevelEstimate(Level level, double litres, double lowL, double highL, double addL) {}
