package trayward.host.app;

import io.javalin.util.JavalinBindException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.ControllerRuntime;
import trayward.controller.app.Settings;
import trayward.controller.port.MonotonicClock;
import trayward.controller.quantity.Range;
import trayward.controller.safety.Limit;
import trayward.host.cli.Work;
import trayward.host.link.InProcessLink;
import trayward.host.link.TrayStatus;
import trayward.host.store.LogFile;
import trayward.host.store.LogRefused;
import trayward.host.store.TrayLog;
import trayward.host.web.PageServer;

/** The main job: controller, page and log in one process, until stopped. One thread and a hook. */
final class RunRunner {

  /** After a failed scan the rest of the program gets this long to close, s; then it is ended. */
  private static final long LAST_WORDS_S = 5;

  private final PrintStream out;
  private final PrintStream err;
  private final CountDownLatch ended = new CountDownLatch(1);
  private final AtomicBoolean failed = new AtomicBoolean();

  RunRunner(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  int run(Optional<Path> config) {
    Settings settings;
    try {
      settings = config.isPresent() ? Settings.read(config.get()) : Settings.standard();
    } catch (ConfigRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    }
    try {
      return serve(settings, LogFile.open(settings.logFolder()));
    } catch (LogRefused e) {
      err.println(e.getMessage());
      return LogWork.exitCode(e);
    } catch (ConfigRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    }
  }

  private int serve(Settings settings, TrayLog log) throws ConfigRefused {
    MonotonicClock clock = System::nanoTime;
    boolean simulated = settings.io() instanceof Settings.Io.Sim;
    ControllerRuntime controller;
    try {
      controller = new ControllerRuntime(settings, clock, RunRunner::wallClockS, this::scanFailed);
    } catch (ConfigRefused e) {
      log.close();
      throw e;
    }
    InProcessLink link =
        new InProcessLink(controller, clock, simulated, settings.server().hostAtTray());
    Recorder recorder = new Recorder(link, log, Clock.systemUTC());
    PageServer page;
    try {
      page =
          PageServer.start(
              settings.server().address(), settings.server().port(), link, log, recorder);
    } catch (JavalinBindException e) {
      controller.close();
      log.close();
      err.println(
          "port "
              + settings.server().port()
              + " on "
              + settings.server().address()
              + " is taken by another program: choose another with [server] port = N in a file"
              + " given by --config FILE");
      return Work.FAILED;
    }
    ScheduledExecutorService ticks = ticks();
    double warmC = settings.limits().get(Limit.WARM_C); // SR-21: above it, moving air is wanted
    Runnable closing = closeOnce(controller, recorder, page, ticks, link, log, warmC);
    Thread hook = new Thread(closing, "closing");
    Runtime.getRuntime().addShutdownHook(hook);
    startLastWords();
    try {
      controller.start();
    } catch (ConfigRefused e) {
      closing.run();
      throw e;
    }
    var unused = ticks.scheduleAtFixedRate(recorder::tick, 0, 100, TimeUnit.MILLISECONDS);
    greet(settings, page.port(), simulated);
    try {
      ended.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    closing.run();
    return failed.get() ? Work.FAILED : Work.DONE;
  }

  private static long wallClockS() {
    return Clock.systemUTC().instant().getEpochSecond();
  }

  private static ScheduledExecutorService ticks() {
    return Executors.newSingleThreadScheduledExecutor(
        task -> {
          Thread thread = new Thread(task, "recorder");
          thread.setDaemon(true);
          return thread;
        });
  }

  /** Heat off first, then the log, then the page; once, whoever asks. */
  private Runnable closeOnce(
      ControllerRuntime controller,
      Recorder recorder,
      PageServer page,
      ScheduledExecutorService ticks,
      InProcessLink link,
      TrayLog log,
      double warmC) {
    AtomicBoolean done = new AtomicBoolean();
    return () -> {
      if (!done.compareAndSet(false, true)) {
        return;
      }
      Optional<TrayStatus> last = link.latest();
      controller.close();
      out.println();
      out.println("Heat is off.");
      last.filter(s -> s.fanCommanded() && !(s.bathC() < warmC))
          .ifPresent(
              s ->
                  out.println(
                      "The fan line is left on"
                          + (Double.isNaN(s.bathC())
                              ? ", and the bath's temperature is not known"
                              : String.format(
                                  Locale.ROOT, " and the bath stands at %.1f °C", s.bathC()))
                          + ": keep air moving until it is below "
                          + Range.plain(warmC)
                          + " °C and the room is cleared."));
      ticks.shutdown();
      recorder.close();
      page.close();
      log.close();
      out.println("The log is closed.");
      out.flush();
    };
  }

  /** SR-17: outputs are off already; the process ends, and not with zero. Allocates nothing. */
  private void scanFailed(Throwable cause) {
    failed.set(true);
    ended.countDown();
  }

  /**
   * Waits for a failed scan and then ends the process, whatever the rest of it does. It is started
   * before it is needed, and says nothing at the end: with a full heap no thread could be made, and
   * a log that blocks would keep it.
   */
  private void startLastWords() {
    Thread last =
        new Thread(
            () -> {
              try {
                ended.await();
                TimeUnit.SECONDS.sleep(LAST_WORDS_S);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              Runtime.getRuntime().halt(Work.FAILED);
            },
            "last-words");
    last.setDaemon(true);
    last.start();
  }

  private void greet(Settings settings, int port, boolean simulated) {
    out.println(
        "Trayward is at http://"
            + settings.server().address()
            + ":"
            + port
            + "/"
            + (simulated ? "   (simulated tray: no real heat, no real fan)" : ""));
    out.println("Prints are kept in " + settings.logFolder().toAbsolutePath());
    out.println(
        "Software only withholds heat. Required beside it: a ground-fault breaker, an independent");
    out.println(
        "thermal cut-out, a hard-wired airflow contact and a hard-wired stop. A filter mask is no");
    out.println("interlock. Mains wiring belongs to a licensed person under local codes.");
    out.println("Ctrl-C ends it with heat off.");
    out.flush();
  }
}
