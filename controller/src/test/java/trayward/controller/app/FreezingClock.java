package trayward.controller.app;

import java.util.concurrent.CountDownLatch;
import trayward.controller.port.MonotonicClock;

/** Monotonic time that can be made to stand still for the thread of scans: it hangs in there. */
final class FreezingClock implements MonotonicClock {
  final CountDownLatch thaw = new CountDownLatch(1);
  volatile boolean frozen;
  volatile boolean hanging;

  @Override
  public long nanos() {
    if (frozen && Thread.currentThread().getName().equals("scan")) {
      hanging = true;
      try {
        thaw.await();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    return System.nanoTime();
  }
}
