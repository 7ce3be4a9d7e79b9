package trayward.host.link;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import trayward.controller.modbus.ModbusClient;
import trayward.controller.modbus.ModbusClient.Reply;
import trayward.controller.station.AnswerRegisters;
import trayward.controller.station.Block;
import trayward.controller.station.Codes;
import trayward.controller.station.CommandCode;
import trayward.controller.station.CommandResult.Outcome;

/**
 * Commands from any thread to the controller, one at a time, a stop before all others. {@link
 * #carry} is the link thread's.
 */
final class CommandLine {

  /** A scan answers within two periods, and the line takes some tenths of a second. */
  private static final long PATIENCE_MS = 2000;

  /** A fit to a whole warm-up takes some seconds on a small computer. */
  private static final long FIT_PATIENCE_MS = 20_000;

  /** More waiting commands than people could press in the time one takes. */
  private static final int MAX_WAITING = 16;

  /** Looks at the result within one round: a scan answers within two periods of 100 ms. */
  private static final int LOOKS = 12;

  private static final long BETWEEN_LOOKS_NANOS = 25_000_000L;

  /** The heartbeat is written in one round of so many: about once a second. */
  private static final int BEAT_ROUNDS = 4;

  private static final int HEARTBEAT = 3;
  private static final int MORE = 4;

  private final ModbusClient client;
  private final Deque<Asked> queue = new ArrayDeque<>();
  private @Nullable Asked inFlight;
  private @Nullable Answered answered;
  private int token;
  private int rounds;

  private record Asked(
      CommandCode code, int argument, int more1, int more2, CompletableFuture<Heard> heard) {}

  /** What was heard of a command: an outcome, or none where it was not delivered. */
  private record Heard(Outcome outcome, String words) {}

  private record Answered(Asked asked, Heard heard) {}

  CommandLine(ModbusClient client) {
    this.client = client;
  }

  /** Asks and waits; {@code wake} wakes the link thread. */
  LinkAnswer ask(CommandCode code, int argument, int more1, int more2, Runnable wake) {
    Asked asked = new Asked(code, argument, more1, more2, new CompletableFuture<>());
    Heard heard = hear(asked, wake, PATIENCE_MS);
    return switch (heard.outcome()) {
      case DONE -> new LinkAnswer.Done();
      case CONFIRM_FIRST -> new LinkAnswer.ConfirmFirst(heard.words());
      case REFUSED, UNKNOWN_COMMAND -> new LinkAnswer.Refused(heard.words());
      case NONE, WAITING -> new LinkAnswer.NotDelivered(heard.words());
    };
  }

  /** The calibration with a measured litre, whose words matter either way. */
  TrayLink.TrayCalibrated askTray(int millilitres, Runnable wake) {
    Asked asked =
        new Asked(CommandCode.CALIBRATE_TRAY, millilitres, 0, 0, new CompletableFuture<>());
    Heard heard = hear(asked, wake, FIT_PATIENCE_MS);
    return new TrayLink.TrayCalibrated(heard.outcome() == Outcome.DONE, heard.words());
  }

  /** Asks and waits for nothing; nothing is asked where too much waits already. */
  void tell(CommandCode code, int argument, Runnable wake) {
    if (put(new Asked(code, argument, 0, 0, new CompletableFuture<>()))) {
      wake.run();
    }
  }

  private Heard hear(Asked asked, Runnable wake, long patienceMs) {
    if (!put(asked)) {
      return new Heard(Outcome.NONE, "too many commands at once: press again");
    }
    wake.run();
    try {
      return asked.heard().get(patienceMs, TimeUnit.MILLISECONDS);
    } catch (TimeoutException | ExecutionException e) {
      asked.heard().cancel(false); // it must not be carried later, when nobody expects it
      return new Heard(Outcome.NONE, "the controller did not answer");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Heard(Outcome.NONE, "the program is being stopped");
    }
  }

  private synchronized boolean put(Asked asked) {
    if (asked.code() == CommandCode.STOP) {
      queue.addFirst(asked); // always taken (SR-14)
      return true;
    }
    return queue.size() < MAX_WAITING && queue.offerLast(asked);
  }

  /** Whether the link thread should not rest. */
  synchronized boolean anyWaiting() {
    return !queue.isEmpty();
  }

  private synchronized @Nullable Asked next() {
    Asked first = queue.peekFirst();
    if (first == null || (inFlight != null && first.code() != CommandCode.STOP)) {
      return null;
    }
    return queue.pollFirst();
  }

  /** Heartbeat, the next command, its result; false where the line is down. */
  boolean carry(long beats) {
    if (rounds++ % BEAT_ROUNDS == 0
        && !done(client.writeRegisters(HEARTBEAT, (int) (beats & 0xFFFF)))) {
      return false;
    }
    Asked next = next();
    while (next != null && next.heard().isDone()) {
      next = next();
    }
    return (next == null || write(next)) && (inFlight == null || look());
  }

  private boolean write(Asked asked) {
    Asked overtaken = inFlight;
    if (overtaken != null) {
      overtaken.heard().complete(new Heard(Outcome.NONE, "a stop came before its answer"));
    }
    inFlight = asked;
    if (!(client.readHoldingRegisters(0, 1) instanceof Reply.Answer before)) {
      return false;
    }
    token = (before.register(0) + 1) & 0xFFFF;
    return done(client.writeRegisters(MORE, asked.more1(), asked.more2()))
        && done(client.writeRegisters(0, token, asked.code().code(), asked.argument()));
  }

  /** Looks for the result for a while; where it takes longer, the next round looks again. */
  private boolean look() {
    for (int i = 0; i < LOOKS && inFlight != null; i++) {
      Reply reply = client.readInputRegisters(AnswerRegisters.BASE, AnswerRegisters.WORDS);
      if (!(reply instanceof Reply.Answer answer)) {
        return false;
      }
      hear(answer);
      if (inFlight != null) {
        LockSupport.parkNanos(BETWEEN_LOOKS_NANOS);
      }
    }
    return true;
  }

  private void hear(Reply.Answer answer) {
    int[] words = new int[AnswerRegisters.WORDS];
    for (int i = 0; i < words.length; i++) {
      words[i] = answer.register(i);
    }
    Block block = new Block(AnswerRegisters.BASE, words);
    Outcome outcome =
        Codes.OUTCOME.name(AnswerRegisters.RESULT.whole(block)).orElse(Outcome.REFUSED);
    Asked asked = inFlight;
    boolean ours = AnswerRegisters.TOKEN.whole(block) == token;
    if (asked != null && ours && outcome != Outcome.WAITING && outcome != Outcome.NONE) {
      answered = new Answered(asked, new Heard(outcome, AnswerRegisters.REASON.text(block)));
      inFlight = null;
    } else if (asked != null && asked.heard().isDone()) {
      inFlight = null; // who asked has gone
    }
  }

  private static boolean done(Reply reply) {
    return reply instanceof Reply.Answer;
  }

  /** Gives the answer that was heard: once the status after it has been read, so that it shows. */
  void release() {
    Answered now = answered;
    answered = null;
    if (now != null) {
      now.asked().heard().complete(now.heard());
    }
  }

  /** The line is down: what waits is told so at once and is not carried later. */
  void undelivered(String why) {
    Asked flying = inFlight;
    inFlight = null;
    if (flying != null) {
      flying.heard().complete(new Heard(Outcome.NONE, why));
    }
    synchronized (this) {
      queue.forEach(asked -> asked.heard().complete(new Heard(Outcome.NONE, why)));
      queue.clear();
    }
  }
}
