package trayward.controller.scan;

import java.util.concurrent.CompletableFuture;
import trayward.controller.calibrate.Correction;
import trayward.controller.event.AlarmCause;
import trayward.controller.port.ProbeRole;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Request;

/** A request on its way to the next scan, with the promise of an answer. */
sealed interface Ask {

  /** Answered by the scan thread. */
  CompletableFuture<Answer> answer();

  /** Something for the interlock. */
  record OfInterlock(Request request, boolean atTray, CompletableFuture<Answer> answer)
      implements Ask {}

  /**
   * A start (SR-23).
   *
   * @param unconfirmed why it must be confirmed first, in words; empty where it need not be
   */
  record Start(String unconfirmed, CompletableFuture<Answer> answer) implements Ask {}

  /** A new set temperature, °C. */
  record SetTemperature(double celsius, boolean atTray, CompletableFuture<Answer> answer)
      implements Ask {}

  /** Something about the liquid in the tray (SR-28). */
  record OfLevel(LevelTold told, boolean atTray, CompletableFuture<Answer> answer) implements Ask {}

  /** Something to be sounded and shown for a moment. */
  record OfCall(Call call, CompletableFuture<Answer> answer) implements Ask {}

  /** One alarm is to be silent for a while. */
  record Silence(AlarmCause cause, CompletableFuture<Answer> answer) implements Ask {}

  /** A new correction of a probe. */
  record Correct(ProbeRole role, Correction correction, CompletableFuture<Answer> answer)
      implements Ask {}
}
