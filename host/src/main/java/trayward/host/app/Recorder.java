package trayward.host.app;

import java.time.Clock;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.concurrent.Executor;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.host.link.Call;
import trayward.host.link.LinkEvent;
import trayward.host.link.TrayLink;
import trayward.host.link.TrayStatus;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.MarkRule;
import trayward.host.session.Moment;
import trayward.host.session.Print;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;
import trayward.host.store.LogFailed;
import trayward.host.store.MarkResult;
import trayward.host.store.TrayLog;
import trayward.host.web.Logbook;
import trayward.host.web.Outlook;

/**
 * Keeps the session: begins and ends it, writes the trace once a second, the events, and the marks.
 * {@link #tick} is called ten times a second by one thread; the rest from any. One lock.
 *
 * <p>Times within a session are the controller's monotonic uptime less that of the session's
 * beginning, so that steps of the wall clock change no elapsed time.
 */
final class Recorder implements Logbook {

  private static final Logger LOG = LoggerFactory.getLogger(Recorder.class);

  /** A session in which nothing runs and nothing is marked ends after this, s: four hours. */
  private static final double IDLE_S = 4 * 3600;

  /** Events waiting for a log that fails; beyond it the oldest are dropped. */
  private static final int MAX_WAITING = 1000;

  private final TrayLink link;
  private final TrayLog log;
  private final Clock wall;
  private final ForecastDesk forecast;
  private final WatchCaller watchCaller;
  private final SummaryKeeper summaries = new SummaryKeeper();
  private final Deque<LinkEvent> waiting = new ArrayDeque<>();
  private Optional<Session> session = Optional.empty();
  private double sessionZeroS;
  private boolean seenRun;
  private double lastSignS;
  private double newestS;
  private long lastTraceSecond = Long.MIN_VALUE;
  private long lastForecastSecond = Long.MIN_VALUE;
  private boolean forecastFollows = true;
  private boolean healthy = true;
  // The mark of the pedal's last press, while nothing has been marked since: a long press means it.
  private Optional<MarkKind> pedalMark = Optional.empty();

  /** A recorder over a log that was just opened: no session is open in it. */
  Recorder(TrayLink link, TrayLog log, Clock wall, Executor learner) {
    this.link = link;
    this.log = log;
    this.wall = wall;
    this.forecast = new ForecastDesk(log, learner);
    this.watchCaller = new WatchCaller(link::call);
  }

  /** Ten times a second: events, trace, beginning and end of the session. */
  synchronized void tick() {
    link.beat();
    for (LinkEvent event : link.takeEvents()) {
      if (waiting.size() >= MAX_WAITING) {
        waiting.removeFirst();
      }
      waiting.addLast(event);
    }
    Optional<TrayStatus> status = link.latest();
    try {
      status.ifPresent(this::follow);
      writeEvents();
      status.ifPresent(this::trace);
      status.ifPresent(this::forecast);
      summaries.tick(log);
      if (!healthy) {
        LOG.info("the log takes what is written again");
      }
      healthy = true;
    } catch (LogFailed e) {
      if (healthy) {
        LOG.error("the log fails, heat control goes on: {}", e.getMessage());
      }
      healthy = false;
    }
  }

  private void follow(TrayStatus s) {
    if (session.isPresent() && s.uptimeS() < newestS) {
      end("controller restarted"); // its clock began anew: elapsed times of before mean nothing now
    }
    newestS = s.uptimeS();
    boolean running = !s.state().equals("OFF") && !s.state().equals("LOCKOUT");
    if (running && session.isEmpty()) {
      begin(s.uptimeS());
    }
    if (session.isEmpty()) {
      return;
    }
    seenRun |= running;
    if (running) {
      lastSignS = s.uptimeS();
    }
    boolean over = seenRun && s.state().equals("OFF");
    boolean idle = s.uptimeS() - lastSignS > IDLE_S;
    if ((over && log.currentPrint().isEmpty()) || idle) {
      end(idle ? "idle" : "off");
    }
  }

  private void begin(double uptimeS) {
    session = Optional.of(log.startSession(wall.instant(), link.simulated()));
    sessionZeroS = uptimeS;
    lastSignS = uptimeS;
    lastTraceSecond = Long.MIN_VALUE;
    seenRun = false;
  }

  private void end(String ending) {
    session.ifPresent(s -> log.endSession(s.id(), wall.instant(), ending));
    session = Optional.empty();
  }

  private void writeEvents() {
    while (!waiting.isEmpty()) {
      LinkEvent event = waiting.getFirst();
      OptionalLong id = session.map(s -> OptionalLong.of(s.id())).orElseGet(OptionalLong::empty);
      log.addEvent(
          id, wall.instant(), event.uptimeS(), event.kind(), event.subject(), event.detail());
      waiting.removeFirst();
      if (event.kind().equals("PEDAL")) {
        if (event.subject().equals("LONG")) {
          takeBack();
        } else {
          markNext(event.uptimeS());
        }
      }
    }
  }

  /** The pedal makes the next mark that makes sense. */
  private MarkResult markNext(double uptimeS) {
    Optional<Print> latest = session.flatMap(s -> log.latestPrint(s.id()));
    double atS = session.isPresent() ? Math.max(0, uptimeS - sessionZeroS) : 0;
    MarkKind kind = MarkRule.pressed(latest, atS);
    boolean own = pedalMark.filter(kind::equals).isPresent();
    MarkResult result = mark(kind, "pedal", uptimeS);
    if (result instanceof MarkResult.Marked || (result instanceof MarkResult.Duplicate && own)) {
      pedalMark = Optional.of(kind);
    }
    LOG.info("pedal: {}", result);
    return result;
  }

  /** A pedal kept down takes back the mark that its own press made, and no other. */
  private Optional<Mark> takeBack() {
    Optional<Mark> gone = pedalMark.isPresent() ? undo() : Optional.empty();
    gone.ifPresent(mark -> LOG.info("pedal kept down: {} taken back", mark.kind().word()));
    pedalMark = Optional.empty();
    return gone;
  }

  @Override
  public synchronized MarkResult pedalPressed() {
    return link.latest()
        .map(status -> markNext(status.uptimeS()))
        .orElseGet(() -> new MarkResult.Refused("the controller does not answer"));
  }

  @Override
  public synchronized Optional<Mark> pedalHeld() {
    return takeBack();
  }

  private void trace(TrayStatus s) {
    if (session.isEmpty()) {
      return;
    }
    double atS = Math.max(0, s.uptimeS() - sessionZeroS);
    long second = (long) Math.floor(atS);
    if (second == lastTraceSecond) {
      return;
    }
    log.addTrace(
        session.get().id(),
        new TraceSample(atS, s.bathC(), s.plateC(), s.setC(), s.duty(), s.state(), s.fanProven()));
    lastTraceSecond = second;
  }

  /** What fails here must not hold up the record, nor be taken for a log that fails. */
  private void forecast(TrayStatus s) {
    long second = (long) Math.floor(s.uptimeS());
    if (second == lastForecastSecond) {
      return;
    }
    lastForecastSecond = second;
    try {
      forecast.follow(session.isPresent() ? s.uptimeS() - sessionZeroS : Double.NaN, s.bathC());
      watchCaller.follow(forecast.outlook());
    } catch (RuntimeException e) {
      if (forecastFollows) {
        LOG.warn("the forecast stays as it was", e);
      }
      forecastFollows = false;
      return;
    }
    forecastFollows = true;
  }

  @Override
  public Optional<Outlook> outlook() {
    return forecast.outlook();
  }

  @Override
  public synchronized MarkResult mark(MarkKind kind, String by) {
    Optional<TrayStatus> status = link.latest();
    if (status.isEmpty()) {
      return new MarkResult.Refused("the controller does not answer");
    }
    return mark(kind, by, status.get().uptimeS());
  }

  private MarkResult mark(MarkKind kind, String by, double uptimeS) {
    if (session.isEmpty() && kind != MarkKind.IN) {
      return new MarkResult.Refused("no print is in progress");
    }
    if (session.isEmpty()) {
      begin(uptimeS);
    }
    lastSignS = uptimeS;
    pedalMark = Optional.empty();
    OptionalDouble bath =
        link.latest()
            .map(TrayStatus::bathC)
            .filter(c -> !Double.isNaN(c))
            .map(OptionalDouble::of)
            .orElseGet(OptionalDouble::empty);
    Moment at = new Moment(Math.max(0, uptimeS - sessionZeroS), wall.instant());
    MarkResult result = log.mark(kind, session.orElseThrow().id(), at, by, bath);
    if (result instanceof MarkResult.Marked) {
      link.call(Call.MARKED); // heard and seen: it is safe in the log
    }
    return result;
  }

  @Override
  public synchronized Optional<Mark> undo() {
    pedalMark = Optional.empty();
    Optional<Mark> gone = session.flatMap(s -> log.undoLastMark(s.id(), wall.instant()));
    gone.ifPresent(mark -> link.call(Call.TAKEN_BACK));
    return gone;
  }

  @Override
  public synchronized Optional<Session> beginSession() {
    if (session.isEmpty()) {
      link.latest().ifPresent(status -> begin(status.uptimeS()));
    }
    return session;
  }

  @Override
  public synchronized OptionalDouble sessionS() {
    Optional<TrayStatus> status = link.latest();
    return session.isPresent() && status.isPresent()
        ? OptionalDouble.of(Math.max(0, status.get().uptimeS() - sessionZeroS))
        : OptionalDouble.empty();
  }

  @Override
  public synchronized boolean healthy() {
    return healthy;
  }

  /** The program ends: what waits is written and the session is ended. */
  synchronized void close() {
    tick();
    try {
      end("program ended");
    } catch (LogFailed e) {
      LOG.error("the session could not be ended in the log: {}", e.getMessage());
    }
  }
}
