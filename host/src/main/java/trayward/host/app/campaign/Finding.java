package trayward.host.app.campaign;

/**
 * Something held against a session: the first moment of its kind.
 *
 * @param hazard of what kind
 * @param tS when it began, s
 * @param detail what was seen
 */
record Finding(Hazard hazard, double tS, String detail) {}
