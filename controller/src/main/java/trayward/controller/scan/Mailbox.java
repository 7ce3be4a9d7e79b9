package trayward.controller.scan;

import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.CompletableFuture;
import trayward.controller.safety.Request;

/**
 * Requests from any thread to the scan thread. Bounded; a stop has a place of its own, so that no
 * crowd of other requests can keep it out (SR-14).
 */
public final class Mailbox {

  /** More waiting requests than people could press in a tenth of a second. */
  private static final int CAPACITY = 64;

  private static final Answer FULL = Answer.refused("too many requests at once: press again");

  private final ArrayBlockingQueue<Ask> queue = new ArrayBlockingQueue<>(CAPACITY);
  private final Object stopLock = new Object();
  private CompletableFuture<Answer> stop = new CompletableFuture<>();
  private boolean stopAsked;

  /** Asks for heat off; always taken. The answer comes with the next scan. */
  public CompletableFuture<Answer> stop() {
    synchronized (stopLock) {
      stopAsked = true;
      return stop;
    }
  }

  /**
   * Asks something of the interlock.
   *
   * @param request what
   * @param atTray whether the asker stands at the tray, which a reset needs
   */
  public CompletableFuture<Answer> ask(Request request, boolean atTray) {
    if (request == Request.STOP) {
      return stop();
    }
    return put(new Ask.OfInterlock(request, atTray, new CompletableFuture<>()));
  }

  /** Asks for a new set temperature, °C. */
  public CompletableFuture<Answer> setTemperature(double celsius) {
    return put(new Ask.SetTemperature(celsius, new CompletableFuture<>()));
  }

  private CompletableFuture<Answer> put(Ask ask) {
    return queue.offer(ask) ? ask.answer() : CompletableFuture.completedFuture(FULL);
  }

  /** Scan thread: everything waiting, at most the capacity, into {@code into}. */
  void drain(List<Ask> into) {
    synchronized (stopLock) {
      if (stopAsked) {
        into.add(new Ask.OfInterlock(Request.STOP, false, stop));
        stop = new CompletableFuture<>();
        stopAsked = false;
      }
    }
    queue.drainTo(into, CAPACITY);
  }
}
