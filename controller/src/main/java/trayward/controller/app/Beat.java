package trayward.controller.app;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A thread of its own that does one thing over and over, for work that a scan must not wait for: a
 * beat that fails is told in the log, and the next one comes all the same. Started once.
 */
final class Beat implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Beat.class);

  /** Longest wait for a beat under way at the end, s: a disk that hangs holds up nothing else. */
  private static final long PATIENCE_S = 2;

  private final String name;
  private final long periodMs;
  private final Runnable task;
  private final ScheduledExecutorService executor;

  Beat(String name, long periodMs, Runnable task) {
    this.name = name;
    this.periodMs = periodMs;
    this.task = task;
    this.executor =
        Executors.newSingleThreadScheduledExecutor(
            body -> {
              Thread thread = new Thread(body, name);
              thread.setDaemon(true);
              return thread;
            });
  }

  void start() {
    var unused =
        executor.scheduleWithFixedDelay(this::once, periodMs, periodMs, TimeUnit.MILLISECONDS);
  }

  private void once() {
    try {
      task.run();
    } catch (RuntimeException e) { // else the executor would fall silent for good
      LOG.error("{} missed a beat", name, e);
    }
  }

  /** Ends it, and does it a last time where the one under way comes to its end. */
  void closeWithLast() {
    if (ended()) {
      once();
    }
  }

  @Override
  public void close() {
    var unused = ended();
  }

  /** Ends it; whether the beat under way came to its end too. */
  boolean ended() {
    executor.shutdown();
    try {
      return executor.awaitTermination(PATIENCE_S, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
