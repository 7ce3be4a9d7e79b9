package trayward.controller.app;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import trayward.controller.regulate.FitJob;
import trayward.controller.regulate.FitResult;
import trayward.controller.regulate.Fits;

/**
 * Does fits on a thread of its own: a scan neither waits for one nor ever finds two of them
 * waiting. Asked and read by the scan thread.
 */
final class FitThread implements Fits, AutoCloseable {

  private final ExecutorService executor =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "fits");
            thread.setDaemon(true);
            return thread;
          });
  private final AtomicBoolean busy = new AtomicBoolean();
  private final AtomicReference<@Nullable FitResult> done = new AtomicReference<>();

  @Override
  public boolean ask(FitJob job) {
    boolean idle = busy.compareAndSet(false, true);
    if (idle) {
      executor.execute(
          () -> {
            try {
              done.set(job.run());
            } finally {
              busy.set(false); // whatever went wrong, the last good belief stays
            }
          });
    }
    return idle;
  }

  @Override
  public @Nullable FitResult take() {
    return done.getAndSet(null);
  }

  @Override
  public void close() {
    executor.shutdownNow();
  }
}
