package trayward.controller.watchdog;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import trayward.controller.port.OutsideWatchdog;

/**
 * Tells systemd of complete scans, by the protocol of sd_notify(3) and sd_watchdog_enabled(3):
 * ready after the first one, alive after the later ones where systemd watches, stopping at an
 * orderly end. Made by one thread, then used by one.
 */
public final class SystemdNotify implements OutsideWatchdog {

  private static final String SOCKET = "NOTIFY_SOCKET";
  private static final String WATCHDOG = "WATCHDOG_USEC";
  private static final String WATCHDOG_PID = "WATCHDOG_PID";

  /** Ten scans: a status older than that helps nobody. */
  private static final long SLOWEST_MS = 1000;

  /** One scan: oftener there is nothing new to tell. */
  private static final long FASTEST_MS = 100;

  /** The manual asks for half of systemd's time at the most; a third leaves one to be missed. */
  private static final int FEEDS_IN_A_TIMEOUT = 3;

  private final UnixDatagrams systemd;
  private final boolean watched;
  private final long periodMs;
  private boolean ready;
  private String said = "";

  private SystemdNotify(UnixDatagrams systemd, boolean watched, long periodMs) {
    this.systemd = systemd;
    this.watched = watched;
    this.periodMs = periodMs;
  }

  /**
   * The way to systemd; empty where it did not start this program.
   *
   * @param environment as it was handed to the program
   * @param pid this process, for a watchdog that may be meant for another one
   * @throws IOException where the environment is not as the protocol has it, in words
   */
  public static Optional<SystemdNotify> of(Map<String, String> environment, long pid)
      throws IOException {
    String socket = environment.get(SOCKET);
    if (socket == null) {
      return Optional.empty();
    }
    long watchedUs = watchedUs(environment, pid);
    long periodMs =
        watchedUs == 0
            ? SLOWEST_MS
            : Math.max(FASTEST_MS, Math.min(SLOWEST_MS, watchedUs / 1000 / FEEDS_IN_A_TIMEOUT));
    try {
      return Optional.of(new SystemdNotify(UnixDatagrams.to(socket), watchedUs > 0, periodMs));
    } catch (IOException e) {
      throw new IOException(SOCKET + ": " + e.getMessage(), e);
    } catch (LinkageError e) { // no native part of the library for this machine
      throw new IOException(SOCKET + " is set, but this machine has no way to it: " + e, e);
    }
  }

  /** systemd's time-out, µs; 0 where it does not watch, or watches another process. */
  private static long watchedUs(Map<String, String> environment, long pid) throws IOException {
    String found = environment.get(WATCHDOG);
    String whose = environment.getOrDefault(WATCHDOG_PID, Long.toString(pid));
    if (found == null || !whose.equals(Long.toString(pid))) {
      return 0;
    }
    try {
      long us = Long.parseLong(found);
      if (us > 0) {
        return us;
      }
    } catch (NumberFormatException e) {
      throw new IOException(refused(found), e);
    }
    throw new IOException(refused(found));
  }

  private static String refused(String found) {
    return WATCHDOG + ": found '" + found + "', accepted is a whole number of µs above 0";
  }

  @Override
  public String name() {
    return "systemd";
  }

  @Override
  public long periodMs() {
    return periodMs;
  }

  @Override
  public void feed(String status) throws IOException {
    StringBuilder text = new StringBuilder(ready ? "" : "READY=1\n");
    if (watched) {
      text.append("WATCHDOG=1\n");
    }
    if (!status.equals(said)) {
      text.append("STATUS=").append(status.replace('\n', ' ')).append('\n');
    }
    if (!text.isEmpty()) {
      systemd.send(text.toString());
    }
    ready = true;
    said = status;
  }

  /** Not in order: it says nothing, and systemd sees the silence or the exit. */
  @Override
  public void end(boolean orderly) throws IOException {
    try (systemd) {
      if (orderly) {
        systemd.send("STOPPING=1\nSTATUS=heat is off\n");
      }
    }
  }
}
