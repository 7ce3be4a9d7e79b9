package trayward.host.app;

import io.javalin.util.JavalinBindException;
import java.time.Clock;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.host.link.TrayLink;
import trayward.host.store.TrayLog;
import trayward.host.web.PageServer;
import trayward.host.web.guard.Door;

/** Page, log and recorder over a link. Made, started and closed by one thread. */
final class HostHalf implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(HostHalf.class);

  private final TrayLog log;
  private final Recorder recorder;
  private final PageServer page;
  private final ScheduledExecutorService ticks;
  private final ExecutorService learner;

  private HostHalf(TrayLog log, Recorder recorder, PageServer page, ExecutorService learner) {
    this.log = log;
    this.recorder = recorder;
    this.page = page;
    this.learner = learner;
    this.ticks = Executors.newSingleThreadScheduledExecutor(task -> daemon(task, "recorder"));
  }

  private static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }

  /**
   * Opens the page.
   *
   * @throws PortTaken where another program has the port
   */
  static HostHalf open(Door door, TrayLink link, TrayLog log) throws PortTaken {
    ExecutorService learner = Executors.newSingleThreadExecutor(task -> daemon(task, "forecast"));
    Recorder recorder = new Recorder(link, log, Clock.systemUTC(), learner);
    try {
      PageServer page = PageServer.start(door, link, log, recorder);
      return new HostHalf(log, recorder, page, learner);
    } catch (JavalinBindException e) {
      throw new PortTaken(
          "port "
              + door.port()
              + " on "
              + door.address()
              + " is taken by another program: choose another with [server] port = N in a file"
              + " given by --config FILE");
    }
  }

  /** The page's port is another program's. */
  static final class PortTaken extends Exception {
    private static final long serialVersionUID = 1L;

    PortTaken(String message) {
      super(message);
    }
  }

  /** Starts recording; nothing where it was closed already: the program is ended as it begins. */
  void start() {
    try {
      var unused = ticks.scheduleAtFixedRate(this::tick, 0, 100, TimeUnit.MILLISECONDS);
    } catch (RejectedExecutionException e) {
      LOG.info("told to end before it began");
    }
  }

  /** What escapes a tick would end all further ones without a word. */
  private void tick() {
    try {
      recorder.tick();
    } catch (RuntimeException e) {
      LOG.error("the recorder missed a beat", e);
    }
  }

  /** The page's port. */
  int port() {
    return page.port();
  }

  /** First the recorder, then the page, then the log. */
  @Override
  public void close() {
    ticks.shutdown();
    recorder.close();
    learner.shutdown();
    page.close();
    log.close();
  }
}
