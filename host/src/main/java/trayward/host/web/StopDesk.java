package trayward.host.web;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.host.link.Command;
import trayward.host.link.LinkAnswer;
import trayward.host.link.TrayLink;

/**
 * Carries stops to the controller on a thread of its own, so that no crowd of requests can keep one
 * waiting (SR-14). All that came while one was under way are carried out by the next one, together.
 * Safe on any thread.
 */
final class StopDesk implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(StopDesk.class);

  /** More waiting for an answer than there are hands: the next stop is theirs too, unanswered. */
  private static final int MOST_WAITING = 1000;

  private final TrayLink link;
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread made = new Thread(task, "stop");
            made.setDaemon(true);
            return made;
          });
  private final Object lock = new Object();
  private List<Consumer<LinkAnswer>> waiting = new ArrayList<>();
  private boolean due;

  StopDesk(TrayLink link) {
    this.link = link;
  }

  /** Asks for heat off; {@code answered} is told on the desk's thread and must not wait. */
  void ask(Consumer<LinkAnswer> answered) {
    boolean full;
    synchronized (lock) {
      full = waiting.size() >= MOST_WAITING;
      if (!full) {
        waiting.add(answered);
      }
      if (!due) {
        due = true;
        thread.execute(this::send);
      }
    }
    if (full) {
      answered.accept(new LinkAnswer.NotDelivered("a thousand stops wait, and go as one"));
    }
  }

  private void send() {
    List<Consumer<LinkAnswer>> asked;
    synchronized (lock) {
      asked = waiting;
      waiting = new ArrayList<>();
      due = false;
    }
    LinkAnswer answer;
    try {
      answer = link.send(Command.STOP);
    } catch (RuntimeException e) {
      LOG.error("a stop failed", e);
      answer = new LinkAnswer.NotDelivered("the host failed; its log says why");
    }
    for (Consumer<LinkAnswer> each : asked) {
      tell(each, answer);
    }
  }

  private static void tell(Consumer<LinkAnswer> asker, LinkAnswer answer) {
    try {
      asker.accept(answer);
    } catch (RuntimeException e) {
      LOG.debug("the asker of a stop is gone", e);
    }
  }

  @Override
  public void close() {
    thread.shutdown();
  }
}
