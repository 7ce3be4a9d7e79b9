package trayward.host.app;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.Settings;
import trayward.controller.app.WiringCheck;
import trayward.controller.app.WiringView;
import trayward.controller.port.ProbeRole;
import trayward.controller.quantity.Range;
import trayward.controller.safety.Limit;
import trayward.controller.scan.BarredOutputs.Output;
import trayward.controller.sense.ReadingKind;
import trayward.host.cli.Work;
import trayward.host.store.FolderLock;
import trayward.host.store.LogRefused;

/**
 * Commissioning at a terminal: lists and watches the inputs, then tries the outputs or finds out
 * which probe is which. Without a person at the terminal no output is driven. One thread, and a
 * hook that switches everything off.
 */
final class WiringCheckWork {

  /** A day: whoever watches longer has forgotten it. */
  static final int MOST_SECONDS = 86_400;

  /** Between two looks, as between two scans. */
  private static final long LOOK_NANOS = 100_000_000L;

  /** A rig that stands still shows after two seconds. */
  private static final double SETTLE_S = 2.2;

  /** Three probes read one by one take 2.25 s, and again as long where the first read failed. */
  private static final double PROBES_S = 5;

  private final PrintStream out;
  private final PrintStream err;
  private final Terminal terminal;
  private final Pace pace;

  WiringCheckWork(PrintStream out, PrintStream err, Terminal terminal, Pace pace) {
    this.out = out;
    this.err = err;
    this.terminal = terminal;
    this.pace = pace;
  }

  int check(Path config, int seconds, boolean warm) {
    try {
      Settings settings = Settings.readUnfinished(config);
      FolderLock folder = FolderLock.hold(settings.logFolder());
      try (WiringCheck check = new WiringCheck(settings, pace)) {
        return attend(check, settings, seconds, warm);
      } finally {
        folder.close();
      }
    } catch (ConfigRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    } catch (LogRefused e) {
      err.println(e.getMessage() + " End it first: two programs must not drive the same outputs.");
      return LogWork.exitCode(e);
    } catch (RuntimeException e) { // a line that is held or broken; all outputs are off
      err.println("the wiring cannot be checked: " + e.getMessage());
      return Work.FAILED;
    }
  }

  /** All outputs are off at the end, whatever ends it. */
  private int attend(WiringCheck check, Settings settings, int seconds, boolean warm) {
    Thread hook = new Thread(check::close, "outputs-off");
    Runtime.getRuntime().addShutdownHook(hook);
    try {
      check.start();
      WiringPrinter printer = listed(check, settings, seconds);
      if (warm) {
        new WarmStep(out, terminal, pace, () -> look(check)).run(settings, seconds);
      } else if (terminal.attended()) {
        new OutputWalk(out, terminal, pace, LOOK_NANOS).run(check, printer);
      }
    } finally {
      check.close();
      removed(hook);
    }
    out.println("All outputs are off.");
    out.flush();
    return Work.DONE;
  }

  private static void removed(Thread hook) {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      return; // the process is ending, and the hook does its work
    }
  }

  private WiringView look(WiringCheck check) {
    WiringView view = check.look(Optional.empty());
    pace.rest(LOOK_NANOS);
    return view;
  }

  private WiringPrinter listed(WiringCheck check, Settings settings, int seconds) {
    out.println("Wiring check. Heat is barred: the two relays are never closed together.");
    if (settings.io() instanceof Settings.Io.Sim) {
      out.println("This is the simulated tray: nothing here is wired.");
    }
    out.flush();
    long began = pace.nanos();
    WiringView view = look(check);
    while (afterS(began) < SETTLE_S || (!answered(view) && afterS(began) < PROBES_S)) {
      view = look(check);
    }
    WiringPrinter printer = new WiringPrinter(out);
    printer.whole(view, pace.nanos());
    warnOfWarmth(view, settings.limits().get(Limit.WARM_C));
    long watched = pace.nanos();
    while (afterS(watched) < seconds) {
      printer.changes(look(check), pace.nanos());
    }
    return printer;
  }

  private double afterS(long beganNanos) {
    return (pace.nanos() - beganNanos) / 1e9;
  }

  private static boolean answered(WiringView view) {
    return view.probes().stream().noneMatch(p -> p.reading().kind() == ReadingKind.ABSENT)
        && view.found().stream().noneMatch(f -> f.reading().kind() == ReadingKind.ABSENT);
  }

  /** SR-21: a warm bath wants moving air, which nobody commands meanwhile. */
  private void warnOfWarmth(WiringView view, double warmC) {
    boolean warm =
        view.probes().stream()
            .anyMatch(
                p ->
                    p.role() != ProbeRole.PLATE
                        && p.reading().valid()
                        && p.reading().celsius() >= warmC);
    if (warm) {
      out.println(
          "CAUTION the bath is above "
              + Range.plain(warmC)
              + " °C and the fan is off: cover the tray or wait until it is cool.");
    }
  }

  /** Words for an output. */
  static String word(Output output) {
    return output.name().toLowerCase(java.util.Locale.ROOT);
  }
}
