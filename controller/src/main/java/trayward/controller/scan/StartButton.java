package trayward.controller.scan;

import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import trayward.controller.port.LineReadings;

/**
 * The start button at the tray: going down it asks for a start; kept down after a start that must
 * be confirmed first (SR-23), it confirms. Scan thread only.
 */
final class StartButton {

  /** Nobody keeps a button down for so long who meant a press. */
  static final long CONFIRM_NANOS = 3_000_000_000L;

  private final Mailbox mailbox;
  // Seen up since the inputs came: a button already down then is stuck, and no press (SR-13).
  private boolean ready;
  private @Nullable CompletableFuture<Answer> asked;
  private long downNanos;

  StartButton(Mailbox mailbox) {
    this.mailbox = mailbox;
  }

  /**
   * Looks at the button once in a scan, before the mailbox is emptied.
   *
   * @param nowNanos monotonic time of the scan, nanoseconds
   */
  void look(LineReadings in, long nowNanos) {
    if (!in.present() || !in.startButton()) {
      ready = in.present();
      asked = null;
    } else if (ready) {
      ready = false;
      downNanos = nowNanos;
      asked = mailbox.start(false, true);
    } else if (confirmable() && nowNanos - downNanos >= CONFIRM_NANOS) {
      asked = null;
      var unused = mailbox.start(true, true);
    }
  }

  private boolean confirmable() {
    return asked != null && asked.isDone() && asked.join().confirmable();
  }
}
