package trayward.host.app;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Stops a program and lets it go on again, in turns, on a thread of its own. */
final class Bursts {

  private Bursts() {}

  /** Begins with these turns; the program runs when the thread has ended. */
  static Thread of(RunningTrayward program, long stoppedMs, long runMs, int turns) {
    Thread thread =
        new Thread(
            () -> {
              for (int i = 0; i < turns; i++) {
                signal(program, "STOP");
                pass(stoppedMs);
                signal(program, "CONT");
                pass(runMs);
              }
            },
            "bursts");
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  private static void signal(RunningTrayward program, String name) {
    try {
      program.signal(name);
    } catch (Exception e) {
      throw new IllegalStateException("no signal " + name, e);
    }
  }

  /** The stop's length is what is tried: it passes in another process. */
  private static void pass(long ms) {
    long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(ms);
    for (long now = System.nanoTime(); now < until; now = System.nanoTime()) {
      LockSupport.parkNanos(until - now);
    }
  }
}
