package trayward.host.app;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.ControllerRuntime;
import trayward.controller.app.Settings;
import trayward.controller.app.StationServer;
import trayward.controller.port.MonotonicClock;
import trayward.host.cli.Work;
import trayward.host.link.InProcessLink;
import trayward.host.link.TrayStatus;

/** The controller as a process of its own, its registers on a line. One thread and a hook. */
final class ControllerRunner {

  private final PrintStream out;
  private final PrintStream err;
  private final LastWords end = new LastWords();

  ControllerRunner(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  int run(Path config) {
    try {
      return serve(Settings.read(config), config);
    } catch (ConfigRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    }
  }

  private int serve(Settings settings, Path config) throws ConfigRefused {
    if (!settings.link().configured()) {
      throw HostRunner.noLine(config);
    }
    MonotonicClock clock = System::nanoTime;
    boolean simulated = settings.io() instanceof Settings.Io.Sim;
    ControllerRuntime controller =
        new ControllerRuntime(settings, clock, Farewell::wallClockS, end::scanFailed);
    StationServer station;
    try {
      station = new StationServer(controller, settings);
    } catch (ConfigRefused e) {
      controller.close();
      throw e;
    }
    InProcessLink own =
        new InProcessLink(controller, clock, simulated, settings.server().hostAtTray());
    Runnable closing = LastWords.onceAndAtExit(() -> close(settings, controller, own, station));
    end.start();
    try {
      controller.start();
    } catch (ConfigRefused e) {
      closing.run();
      throw e;
    }
    station.start();
    out.println(
        "The controller answers on "
            + settings.link().words()
            + ", unit "
            + StationServer.UNIT
            + (simulated ? "   (simulated tray: no real heat, no real fan)" : ""));
    out.println("Its record is kept in " + settings.logFolder().toAbsolutePath());
    Farewell.cautions(out);
    return end.await(closing);
  }

  private void close(
      Settings settings, ControllerRuntime controller, InProcessLink own, StationServer station) {
    Optional<TrayStatus> last = own.latest();
    controller.close();
    station.close();
    Farewell.heatIsOff(out, settings, last);
    out.flush();
  }
}
