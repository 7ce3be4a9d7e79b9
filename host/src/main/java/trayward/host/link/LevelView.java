package trayward.host.link;

/**
 * What the controller thinks of the liquid in the tray.
 *
 * @param level WELL, LOW or UNSURE
 * @param litres best estimate, L
 * @param lowL least that it may be, L
 * @param highL most that it may be, L
 * @param addL water to add to be as full as was said, L
 */
public record LevelView(String level, double litres, double lowL, double highL, double addL) {}
