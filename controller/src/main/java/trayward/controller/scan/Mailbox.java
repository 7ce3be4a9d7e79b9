package trayward.controller.scan;

import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import trayward.controller.calibrate.Correction;
import trayward.controller.event.AlarmCause;
import trayward.controller.port.ProbeRole;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Request;

/**
 * Requests from any thread to the scan thread. Bounded; a stop has a place of its own, so that no
 * crowd of other requests can keep it out (SR-14).
 */
public final class Mailbox {

  /** More waiting requests than people could press in a tenth of a second. */
  private static final int CAPACITY = 64;

  /** Why a correction is refused in any other state, in words. */
  public static final String AT_REST_ONLY =
      "a probe is calibrated at rest, in OFF or AFTER_RUN with heat off, not in ";

  private static final Answer FAR_START =
      Answer.refused("start needs a person at the tray: its own button there, where one is wired");

  private static final Answer FAR_PRESENCE =
      Answer.refused("presence is shown at the tray: its pedal or button");

  private static final Answer FULL = Answer.refused("too many requests at once: press again");

  private final ArrayBlockingQueue<Ask> queue = new ArrayBlockingQueue<>(CAPACITY);
  private final Object stopLock = new Object();
  private CompletableFuture<Answer> stop = new CompletableFuture<>();
  private boolean stopAsked;
  private final Supplier<String> startUnconfirmed;

  /** A mailbox of a tray whose starts never need a confirmation: a rehearsal is never overdue. */
  public Mailbox() {
    this(() -> "");
  }

  /**
   * A mailbox of a tray that is looked after (SR-23).
   *
   * @param startUnconfirmed asked at each start, on the asker's thread: why it must be confirmed
   *     first, in words; empty where it need not be
   */
  public Mailbox(Supplier<String> startUnconfirmed) {
    this.startUnconfirmed = startUnconfirmed;
  }

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
   * @param atTray whether the asker stands at the tray, which a start, a reset and a sign of
   *     presence need (SR-12, SR-13, SR-15)
   */
  public CompletableFuture<Answer> ask(Request request, boolean atTray) {
    if (request == Request.STOP) {
      return stop();
    }
    if (request == Request.START) {
      return start(false, atTray);
    }
    if (request == Request.PRESENCE && !atTray) {
      return CompletableFuture.completedFuture(FAR_PRESENCE);
    }
    return put(new Ask.OfInterlock(request, atTray, new CompletableFuture<>()));
  }

  /**
   * Asks for a start.
   *
   * @param confirmed whether the person has read what is overdue and starts all the same (SR-23)
   * @param atTray whether the asker stands at the tray; refused otherwise (SR-13)
   */
  public CompletableFuture<Answer> start(boolean confirmed, boolean atTray) {
    if (!atTray) {
      return CompletableFuture.completedFuture(FAR_START);
    }
    String unconfirmed = confirmed ? "" : startUnconfirmed.get();
    return put(new Ask.Start(unconfirmed, new CompletableFuture<>()));
  }

  /**
   * Asks for a new set temperature, °C.
   *
   * @param atTray whether the asker stands at the tray, so that it counts as presence (SR-15)
   */
  public CompletableFuture<Answer> setTemperature(double celsius, boolean atTray) {
    return put(new Ask.SetTemperature(celsius, atTray, new CompletableFuture<>()));
  }

  /**
   * Says something about the liquid in the tray (SR-28).
   *
   * @param atTray whether who says it stands at the tray, so that it counts as presence (SR-15)
   */
  public CompletableFuture<Answer> level(LevelTold told, boolean atTray) {
    return put(new Ask.OfLevel(told, atTray, new CompletableFuture<>()));
  }

  /** Asks buzzer and lamp for a moment; counts as nobody's presence. */
  public CompletableFuture<Answer> call(Call call) {
    return put(new Ask.OfCall(call, new CompletableFuture<>()));
  }

  /** Asks for silence of one alarm, for two minutes; refused where it does not sound. */
  public CompletableFuture<Answer> silence(AlarmCause cause) {
    return put(new Ask.Silence(cause, new CompletableFuture<>()));
  }

  /** Asks for a new correction of a probe; refused unless the tray rests with heat off. */
  public CompletableFuture<Answer> correct(ProbeRole role, Correction correction) {
    return put(new Ask.Correct(role, correction, new CompletableFuture<>()));
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
