package trayward.host.app;

import java.io.PrintStream;
import java.util.Optional;
import trayward.controller.app.WiringCheck;
import trayward.controller.app.WiringView;
import trayward.controller.scan.BarredOutputs.Doing;
import trayward.controller.scan.BarredOutputs.Output;

/** Tries the outputs one by one, each only after the person has said so. One thread. */
final class OutputWalk {

  /** Lines that are no answer before a step counts as skipped. */
  private static final int MOST_SLIPS = 5;

  /** An output that does not come on within this time, rest and all, is given up, s. */
  private static final double PATIENCE_S = 5;

  /** What hangs on an output may go on for a moment, and is watched so long, s. */
  private static final double AFTER_S = 1.5;

  private final PrintStream out;
  private final Terminal terminal;
  private final Pace pace;
  private final long lookNanos;

  OutputWalk(PrintStream out, Terminal terminal, Pace pace, long lookNanos) {
    this.out = out;
    this.terminal = terminal;
    this.pace = pace;
    this.lookNanos = lookNanos;
  }

  /** One output: how long it is on, and what to look for. */
  private enum Step {
    FAN(Output.FAN, 10, "switch the fan on", "air must move; airflow and fan_rpm must follow"),
    BUZZER(Output.BUZZER, 2, "sound the buzzer", "it must be loud enough beside a running fan"),
    LAMP(Output.LAMP, 2, "light the lamp, where one is wired", "it must be seen beside the tray"),
    WATCHDOG(
        Output.WATCHDOG_LINE, 3, "pulse the watchdog line alone", "no relay may pull in by it"),
    SAFETY(
        Output.SAFETY_RELAY,
        3,
        "close the safety relay alone, with the pulses that hold it",
        "it must pull in once and let go; the heater must stay cold"),
    HEATER(
        Output.HEATER_RELAY,
        3,
        "close the heater relay alone",
        "it must pull in once and let go; the heater must stay cold");

    private final Output output;
    private final int seconds;
    private final String does;
    private final String lookFor;

    Step(Output output, int seconds, String does, String lookFor) {
      this.output = output;
      this.seconds = seconds;
      this.does = does;
      this.lookFor = lookFor;
    }
  }

  /** What a person wants. */
  private enum Wish {
    DO,
    SKIP,
    QUIT
  }

  void run(WiringCheck check, WiringPrinter printer) {
    out.println(
        "Before the relays are tried for the first time pull the heater's plug: a contact that is"
            + " welded cannot be seen from here.");
    for (Step step : Step.values()) {
      Wish wish = wish(step);
      if (wish == Wish.QUIT) {
        return;
      }
      if (wish == Wish.DO) {
        tried(step, check, printer);
      }
    }
  }

  private Wish wish(Step step) {
    for (int slips = 0; slips < MOST_SLIPS; slips++) {
      out.println(
          "ask     press Enter to "
              + step.does
              + " for "
              + step.seconds
              + " s, s to skip, q to quit");
      out.flush();
      Optional<String> said = terminal.line().map(String::trim);
      if (said.isEmpty() || said.get().equalsIgnoreCase("q")) {
        return Wish.QUIT;
      }
      if (said.get().isEmpty()) {
        return Wish.DO;
      }
      if (said.get().equalsIgnoreCase("s")) {
        return Wish.SKIP;
      }
    }
    return Wish.SKIP;
  }

  private void tried(Step step, WiringCheck check, WiringPrinter printer) {
    String name = WiringCheckWork.word(step.output);
    Doing before = Doing.OFF;
    long asked = pace.nanos();
    long onSince = 0;
    while (true) {
      WiringView view = check.look(Optional.of(step.output));
      Doing doing = view.doing();
      if (doing != before) {
        out.println("output  " + name + " " + words(doing, step));
        out.flush();
        onSince = pace.nanos();
        before = doing;
      }
      printer.changes(view, pace.nanos());
      boolean goesOn =
          doing == Doing.ON
              ? since(onSince) < step.seconds
              : doing == Doing.RESTING && since(asked) < PATIENCE_S;
      if (!goesOn) {
        break;
      }
      pace.rest(lookNanos);
    }
    check.look(Optional.empty());
    out.println("output  " + name + " off");
    out.flush();
    long off = pace.nanos();
    while (since(off) < AFTER_S) {
      printer.changes(check.look(Optional.empty()), pace.nanos());
      pace.rest(lookNanos);
    }
  }

  private double since(long nanos) {
    return (pace.nanos() - nanos) / 1e9;
  }

  private static String words(Doing doing, Step step) {
    return switch (doing) {
      case ON -> "on: " + step.lookFor;
      case RESTING -> "waits until the other relay has surely let go";
      case OFF -> "off";
      case OVER -> "has had its time";
      case STOPPED -> "refused: the stop circuit is open, or no input answers";
      case OTHER_CONTACT_CLOSED ->
          "refused: the contact of the other relay reads as closed; it may be welded";
    };
  }
}
