package trayward.host.web;

import java.util.Optional;
import java.util.OptionalDouble;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.Session;
import trayward.host.store.MarkResult;

/** What the page's requests need of the recording of a session. Safe on any thread. */
public interface Logbook {

  /** Marks a moment now; an {@code in} begins a print, and a session where none is open. */
  MarkResult mark(MarkKind kind, String by);

  /** Takes back the newest mark of the open session; empty where there is none. */
  Optional<Mark> undo();

  /** A foot on a pedal, wherever it hangs: the next mark that makes sense. */
  MarkResult pedalPressed();

  /**
   * The foot stayed for a second: the mark its press made is taken back; empty where it made none.
   */
  Optional<Mark> pedalHeld();

  /** The open session, begun now where none is; empty where the controller does not answer. */
  Optional<Session> beginSession();

  /** Time on the open session's line now, s; empty where none is open. */
  OptionalDouble sessionS();

  /** Whether the log takes what is written. */
  boolean healthy();

  /** The forecast as it is now; empty where nothing is known of the tray. */
  default Optional<Outlook> outlook() {
    return Optional.empty();
  }
}
