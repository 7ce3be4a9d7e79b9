package trayward.controller.port;

/** Time that only goes forward. Read once a scan, by the loop alone. */
@FunctionalInterface
public interface MonotonicClock {

  /** Nanoseconds from an arbitrary origin. */
  long nanos();
}
