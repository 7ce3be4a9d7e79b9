package trayward.controller.port;

/** Time of day and date, for due dates of maintenance and for records only (SR-22, SR-23). */
@FunctionalInterface
public interface WallClock {

  /** Seconds since 1970-01-01T00:00Z; may jump either way at any time. */
  long epochSeconds();
}
