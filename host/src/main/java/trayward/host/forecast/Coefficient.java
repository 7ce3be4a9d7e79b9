package trayward.host.forecast;

/**
 * A coefficient of a law. Immutable.
 *
 * @param term what it belongs to, with its unit
 * @param value its value
 * @param standardError its standard error, or standard deviation where it is shrunk
 */
public record Coefficient(Term term, double value, double standardError) {}
