package trayward.host.link;

/**
 * Something the controller reported.
 *
 * @param uptimeS when, s since its power-up
 * @param kind what sort
 * @param subject what it concerns
 * @param detail the rest, in words
 */
public record LinkEvent(double uptimeS, String kind, String subject, String detail) {}
