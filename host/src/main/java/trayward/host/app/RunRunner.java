package trayward.host.app;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.ControllerRuntime;
import trayward.controller.app.Settings;
import trayward.controller.port.MonotonicClock;
import trayward.host.app.demo.DemoFolder;
import trayward.host.cli.Work;
import trayward.host.link.InProcessLink;
import trayward.host.link.TrayStatus;
import trayward.host.store.LogFile;
import trayward.host.store.LogRefused;
import trayward.host.store.TrayLog;
import trayward.host.web.guard.Door;

/** The main job: controller, page and log in one process, until stopped. One thread and a hook. */
final class RunRunner {

  private final PrintStream out;
  private final PrintStream err;
  private final LastWords end = new LastWords();

  RunRunner(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  int run(Optional<Path> config, boolean demo) {
    try {
      Settings told = config.isPresent() ? Settings.read(config.get()) : Settings.standard();
      if (demo && told.io().outside()) {
        err.println("--demo: found a tray beyond the program in [io], accepted is kind = \"sim\"");
        return Work.WRONG_WORDS;
      }
      Door door = DoorWork.of(told, config, true);
      Settings settings = demo ? demo(told) : told;
      return serve(settings, door, LogFile.open(settings.logFolder(), BookSettings.of(settings)));
    } catch (LogRefused e) {
      err.println(e.getMessage());
      return LogWork.exitCode(e);
    } catch (ConfigRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    } catch (DemoFolder.Taken e) {
      err.println(e.getMessage());
      return Work.WRONG_WORDS;
    } catch (IOException e) {
      err.println(DemoFolder.NAME + ": cannot be made: " + e.getMessage());
      return Work.FAILED;
    }
  }

  /** The same settings over an invented season in a folder of its own. */
  private Settings demo(Settings told) throws DemoFolder.Taken, LogRefused, IOException {
    Path folder = DemoFolder.beside(told.logFolder());
    boolean made = DemoFolder.ready(folder);
    out.println(
        "INVENTED SEASON: no print in it was ever made. It was "
            + (made ? "written to " : "found in ")
            + folder);
    return told.inFolder(folder);
  }

  private int serve(Settings settings, Door door, TrayLog log) throws ConfigRefused {
    MonotonicClock clock = System::nanoTime;
    boolean simulated = settings.io() instanceof Settings.Io.Sim;
    ControllerRuntime controller;
    try {
      controller = new ControllerRuntime(settings, clock, Farewell::wallClockS, end::scanFailed);
    } catch (ConfigRefused e) {
      log.close();
      throw e;
    }
    InProcessLink link =
        new InProcessLink(controller, clock, simulated, settings.server().hostAtTray());
    HostHalf host;
    try {
      host = HostHalf.open(door, link, log);
    } catch (HostHalf.PortTaken e) {
      controller.close();
      log.close();
      err.println(e.getMessage());
      return Work.FAILED;
    }
    Runnable closing = LastWords.onceAndAtExit(() -> close(settings, controller, link, host));
    end.start();
    try {
      controller.start();
    } catch (ConfigRefused e) {
      closing.run();
      throw e;
    }
    host.start();
    greet(settings, door, host.port(), simulated);
    return end.await(closing);
  }

  /** Heat off first, then the log, then the page. */
  private void close(
      Settings settings, ControllerRuntime controller, InProcessLink link, HostHalf host) {
    Optional<TrayStatus> last = link.latest();
    controller.close();
    Farewell.heatIsOff(out, settings, last);
    host.close();
    out.println("The log is closed.");
    out.flush();
  }

  private void greet(Settings settings, Door door, int port, boolean simulated) {
    out.println(
        DoorWork.greeting(door, port)
            + (simulated ? "   (simulated tray: no real heat, no real fan)" : ""));
    DoorWork.caution(settings, door).ifPresent(out::println);
    out.println("Prints are kept in " + settings.logFolder().toAbsolutePath());
    if (settings.link().configured()) {
      out.println("The [link] table is not used here: controller and host share this process.");
    }
    Farewell.cautions(out);
  }
}
