package trayward.controller.station;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import trayward.controller.port.ProbeRole;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Request;
import trayward.controller.scan.Answer;

/**
 * Carries out what a host writes: a new token acts once. One command at a time, but for a stop,
 * which is always taken. One lock; nothing in it waits.
 */
final class CommandDesk {

  private final StationTray tray;
  private int token;
  private @Nullable CompletableFuture<Answer> waiting;
  private CommandResult last = new CommandResult(0, CommandResult.Outcome.NONE, "");

  CommandDesk(StationTray tray) {
    this.tray = tray;
  }

  /**
   * A command as it is written.
   *
   * @param token a number that must differ from the last one
   * @param code a {@link CommandCode}
   * @param argument its argument, 0 to 65535
   * @param more1 a second one
   * @param more2 a third one
   */
  record Written(int token, int code, int argument, int more1, int more2) {}

  /** The token that was acted on last. */
  synchronized int token() {
    return token;
  }

  /** What became of the last command. */
  synchronized CommandResult result() {
    CompletableFuture<Answer> answer = waiting;
    if (answer != null && answer.isDone()) {
      last = of(token, answer.join());
      waiting = null;
    }
    return last;
  }

  private static CommandResult of(int token, Answer answer) {
    CommandResult.Outcome outcome =
        answer.accepted()
            ? CommandResult.Outcome.DONE
            : answer.confirmable()
                ? CommandResult.Outcome.CONFIRM_FIRST
                : CommandResult.Outcome.REFUSED;
    return new CommandResult(token, outcome, answer.reason());
  }

  /** Acts on a new token; false where another command is still waiting for its answer. */
  synchronized boolean write(Written command) {
    if (command.token() == token) {
      return true; // written again: it has acted already
    }
    boolean stop = command.code() == CommandCode.STOP.code();
    if (result().outcome() == CommandResult.Outcome.WAITING && !stop) {
      return false;
    }
    token = command.token();
    Optional<CommandCode> code = CommandCode.of(command.code());
    if (code.isEmpty()) {
      waiting = null;
      last =
          new CommandResult(
              token,
              CommandResult.Outcome.UNKNOWN_COMMAND,
              "there is no command " + command.code());
      return true;
    }
    waiting = act(code.get(), command);
    last = new CommandResult(token, CommandResult.Outcome.WAITING, "");
    return true;
  }

  private CompletableFuture<Answer> act(CommandCode code, Written w) {
    return switch (code) {
      case STOP -> tray.mailbox().stop();
      case START -> tray.mailbox().start(false, tray.hostAtTray());
      case START_CONFIRMED -> tray.mailbox().start(true, tray.hostAtTray());
      case ACKNOWLEDGE -> ask(Request.ACKNOWLEDGE);
      case RESET -> ask(Request.RESET);
      case PRESENCE -> ask(Request.PRESENCE);
      case SET_TEMPERATURE ->
          tray.mailbox().setTemperature((short) w.argument() / 100.0, tray.hostAtTray());
      case TOP_UP -> level(new LevelTold.Poured(w.argument() / 1000.0));
      case LEVEL_HOLDS -> level(new LevelTold.Holds(w.argument() / 1000.0));
      case LEVEL_AS_SAID -> level(new LevelTold.AsSaid());
      case UPKEEP_DONE -> upkeep(w.argument());
      case CALIBRATE_ICE -> role(w).map(tray::calibrateIce).orElseGet(CommandDesk::noSuch);
      case CALIBRATE_REFERENCE ->
          role(w)
              .map(
                  role ->
                      tray.calibrateReference(role, (short) w.more1() / 100.0, w.more2() / 1000.0))
              .orElseGet(CommandDesk::noSuch);
      case FORGET_CALIBRATION ->
          role(w).map(tray::forgetCalibration).orElseGet(CommandDesk::noSuch);
      case CALL ->
          Codes.CALL.name(w.argument()).map(tray.mailbox()::call).orElseGet(CommandDesk::noSuch);
      case SILENCE ->
          Codes.causeOf(w.argument()).map(tray.mailbox()::silence).orElseGet(CommandDesk::noSuch);
      case CALIBRATE_TRAY -> tray.calibrateTray(w.argument() / 1000.0);
    };
  }

  /** What the coils ask: it needs no token and is answered by nobody. */
  void ask(CommandCode code) {
    var unused = act(code, new Written(0, code.code(), 0, 0, 0));
  }

  private CompletableFuture<Answer> ask(Request request) {
    return tray.mailbox().ask(request, tray.hostAtTray());
  }

  private CompletableFuture<Answer> level(LevelTold told) {
    return tray.mailbox().level(told, tray.hostAtTray());
  }

  private CompletableFuture<Answer> upkeep(int item) {
    return Codes.UPKEEP.name(item).map(tray::upkeepDone).orElseGet(CommandDesk::noSuch);
  }

  private static Optional<ProbeRole> role(Written w) {
    return Codes.PROBE.name(w.argument());
  }

  private static CompletableFuture<Answer> noSuch() {
    return CompletableFuture.completedFuture(Answer.refused("there is no such argument"));
  }
}
