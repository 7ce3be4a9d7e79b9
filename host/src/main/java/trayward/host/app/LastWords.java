package trayward.host.app;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import trayward.host.cli.Work;

/**
 * The end of a program that holds a tray: it waits for it, and ends the process after a failed
 * scan, whatever the rest does (SR-17). Any thread.
 */
final class LastWords {

  /** After a failed scan the rest of the program gets this long to close, s; then it is ended. */
  private static final long LAST_WORDS_S = 5;

  private final CountDownLatch ended = new CountDownLatch(1);
  private final AtomicBoolean failed = new AtomicBoolean();

  /** SR-17: outputs are off already; the process ends, and not with zero. Allocates nothing. */
  void scanFailed(Throwable cause) {
    failed.set(true);
    ended.countDown();
  }

  /** Waits for the end, closes, and says how the process exits. */
  int await(Runnable closing) {
    try {
      ended.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    closing.run();
    return failed.get() ? Work.FAILED : Work.DONE;
  }

  /**
   * Waits for a failed scan and then ends the process, whatever the rest of it does. It is started
   * before it is needed, and says nothing at the end: with a full heap no thread could be made, and
   * a log that blocks would keep it.
   */
  void start() {
    Thread last =
        new Thread(
            () -> {
              try {
                ended.await();
                TimeUnit.SECONDS.sleep(LAST_WORDS_S);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              Runtime.getRuntime().halt(Work.FAILED);
            },
            "last-words");
    last.setDaemon(true);
    last.start();
  }

  /** Runs {@code closing} once, whoever asks, also when the process is ended from outside. */
  static Runnable onceAndAtExit(Runnable closing) {
    AtomicBoolean done = new AtomicBoolean();
    Runnable once =
        () -> {
          if (done.compareAndSet(false, true)) {
            closing.run();
          }
        };
    Runtime.getRuntime().addShutdownHook(new Thread(once, "closing"));
    return once;
  }
}
