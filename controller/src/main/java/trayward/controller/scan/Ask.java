package trayward.controller.scan;

import java.util.concurrent.CompletableFuture;
import trayward.controller.safety.Request;

/** A request on its way to the next scan, with the promise of an answer. */
sealed interface Ask {

  /** Answered by the scan thread. */
  CompletableFuture<Answer> answer();

  /** Something for the interlock. */
  record OfInterlock(Request request, boolean atTray, CompletableFuture<Answer> answer)
      implements Ask {}

  /** A new set temperature, °C. */
  record SetTemperature(double celsius, CompletableFuture<Answer> answer) implements Ask {}
}
