package trayward.controller.scan;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import trayward.controller.calibrate.Correction;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;
import trayward.controller.keep.KeepStore;
import trayward.controller.keep.RelayWear;
import trayward.controller.port.LineReader;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLines;
import trayward.controller.port.ProbeReader;
import trayward.controller.port.ProbeRole;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.RegulatorInput;
import trayward.controller.regulate.TimeProportioner;
import trayward.controller.safety.Interlock;
import trayward.controller.safety.InterlockInputs;
import trayward.controller.safety.InterlockState;
import trayward.controller.safety.LevelEstimate;
import trayward.controller.safety.LevelWatch;
import trayward.controller.safety.Proof;
import trayward.controller.safety.Refusal;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;
import trayward.controller.safety.ThermalInput;
import trayward.controller.safety.Verdict;
import trayward.controller.sense.ProbeTrack;

/**
 * One scan: read, classify, regulate, interlock last, write, feed the watchdog line, publish. Owns
 * all control state; one thread. Time is handed in.
 */
public final class Scan {

  private static final int PERIOD_MS = Interlock.PERIOD_MS;

  private final ScanSettings settings;
  private final LineReader lines;
  private final OutputLines outputs;
  private final HeaterGate heater;
  private final Regulator regulator;
  private final KeepStore store;
  private final Mailbox mailbox;
  private final Reporter reporter;
  private final Publisher publisher;
  private final TrayNews trayNews;
  private final Interlock interlock;
  private final Probes probes;
  private final Buttons buttons = new Buttons();
  private final StartButton startButton;
  private final HostPulse host;
  private final List<Ask> asks = new ArrayList<>();
  private boolean startUnconfirmed;
  private boolean rests;

  private InterlockState state;
  private KeepRecord kept;
  private TimeProportioner pulses = TimeProportioner.START;
  private double setC;
  private boolean permittedBefore;
  private final HeatWatches watches;
  private final Signals signals = new Signals();
  private final List<Ask.Silence> silent = new ArrayList<>();
  private Written written;
  private LevelWatch level;
  private boolean watchdogLevel;
  private long scan;
  private long lastNanos;

  /** A controller just powered up at {@code nowNanos}, its probes as bought. */
  public Scan(
      ScanSettings settings,
      LineReader lines,
      ProbeReader probeReader,
      OutputLines outputs,
      Regulator regulator,
      KeepStore store,
      Mailbox mailbox,
      EventBox events,
      HostPulse host,
      long nowNanos) {
    this(
        settings,
        lines,
        probeReader,
        Map.of(),
        outputs,
        regulator,
        store,
        mailbox,
        events,
        host,
        nowNanos);
  }

  /**
   * A controller just powered up at {@code nowNanos}, its probes corrected by what is on record.
   */
  public Scan(
      ScanSettings settings,
      LineReader lines,
      ProbeReader probeReader,
      Map<ProbeRole, Correction> corrections,
      OutputLines outputs,
      Regulator regulator,
      KeepStore store,
      Mailbox mailbox,
      EventBox events,
      HostPulse host,
      long nowNanos) {
    this.settings = settings;
    this.lines = lines;
    this.outputs = outputs;
    this.heater = new HeaterGate(outputs.heaterRelay());
    this.regulator = regulator;
    this.store = store;
    this.mailbox = mailbox;
    this.startButton = new StartButton(mailbox);
    this.host = host;
    this.interlock = new Interlock(settings.limits(), settings.spinDownS());
    this.probes = new Probes(probeReader, settings, corrections, events, nowNanos);
    this.setC = settings.startSetC();
    this.level = LevelWatch.start(settings.model(), settings.room(), settings.limits());
    KeepLoad load = store.load();
    this.state = InterlockState.powerUp(load);
    RelayWear worn =
        load instanceof KeepLoad.Loaded loaded ? loaded.record().wear() : RelayWear.NONE;
    this.kept = state.keep().worn(worn);
    this.written = Written.nothing(worn);
    this.watches = new HeatWatches(settings, kept.heatInProgress());
    this.reporter = new Reporter(events, settings.limits());
    this.publisher = new Publisher(settings.limits(), probes);
    this.trayNews = new TrayNews(settings, events);
    events.put(new TrayEvent(nowNanos, EventKind.POWER_UP, state.state().name(), words(load)));
    if (load instanceof KeepLoad.Unreadable) {
      store.offer(kept);
    }
  }

  private static String words(KeepLoad load) {
    if (load instanceof KeepLoad.Unreadable bad) {
      return bad.why();
    }
    boolean heat = load instanceof KeepLoad.Loaded loaded && loaded.record().heatInProgress();
    return heat ? "power was lost in a run with heat" : "";
  }

  /**
   * Runs one scan.
   *
   * @param nowNanos monotonic time, read once for this scan
   */
  public Snapshot run(long nowNanos) {
    scan++;
    if (scan == 1) {
      // Nothing was late before the first scan: wiring took what it took.
      lastNanos = nowNanos - PERIOD_MS * 1_000_000L;
    }
    long wholeMs = (nowNanos - lastNanos) / 1_000_000L;
    lastNanos += wholeMs * 1_000_000L; // the rest counts in the next scan: no time is lost
    int elapsedMs = (int) Math.min(Integer.MAX_VALUE, wholeMs);
    LineReadings in = lines.read(nowNanos);
    probes.read(nowNanos);
    EnumSet<Request> requests = EnumSet.noneOf(Request.class);
    boolean pedal = buttons.pressed(in, requests);
    boolean pedalLong = buttons.grownLong(in, pedal, nowNanos);
    boolean atTray = requests.contains(Request.RESET);
    asks.clear();
    silent.clear();
    startUnconfirmed = false;
    rests = resting();
    startButton.look(in, nowNanos);
    mailbox.drain(asks);
    for (Ask ask : asks) {
      atTray |= gather(ask, requests, nowNanos);
    }
    ThermalInput thermal = probes.thermal(elapsedMs / 1000.0, written.heat(), state.state());
    watches.see(thermal, elapsedMs, in, written);
    level = level.next(thermal);
    double asked = regulate(elapsedMs, nowNanos);
    double duty = watches.looking() ? 0 : asked;
    InterlockInputs inputs = inputs(in, elapsedMs, requests, atTray, nowNanos);
    Verdict verdict = interlock.step(state, inputs, scan);
    signals.next(verdict.buzzer() ? verdict.alarms() : List.of(), nowNanos);
    written = write(verdict, duty, elapsedMs);
    keep(verdict);
    reporter.report(nowNanos, state.state(), verdict, requests, pedal, pedalLong, watches::detail);
    LevelEstimate liquid = level.estimate();
    reporter.level(nowNanos, liquid);
    answer(verdict.refused());
    state = verdict.next();
    permittedBefore = verdict.permitted();
    TrayView tray = trayNews.next(nowNanos, regulator.lesson(), setC, state.state());
    return publisher.snapshot(scan, nowNanos, in, inputs, verdict, written, liquid, tray);
  }

  /** Opens every relay and silences the watchdog line; the fan as SR-21 wants it. */
  public void shutDown() {
    try {
      heater.open();
    } finally {
      try {
        outputs.safetyRelay().write(false);
      } finally {
        try {
          outputs.buzzer().write(false);
        } finally {
          outputs.lamp().write(false);
        }
      }
    }
    if (!written.wear().equals(kept.wear())) {
      kept = kept.worn(written.wear());
      store.offer(kept);
    }
  }

  /** Whether the fan is commanded on as the last scan left it. */
  public boolean fanCommanded() {
    return state.fan().commanded();
  }

  private boolean gather(Ask ask, EnumSet<Request> requests, long nowNanos) {
    if (ask instanceof Ask.OfInterlock of) {
      requests.add(of.request());
      return of.request() == Request.RESET && of.atTray();
    }
    if (ask instanceof Ask.Start start) {
      // One confirmed start among several is enough: each is a person's.
      boolean asked = !requests.add(Request.START);
      startUnconfirmed = !start.unconfirmed().isEmpty() && (startUnconfirmed || !asked);
      return false;
    }
    if (ask instanceof Ask.SetTemperature set && settable(set.celsius())) {
      setC = set.celsius();
      present(set.atTray(), requests);
    } else if (ask instanceof Ask.OfLevel of && of.told().believable()) {
      level = level.told(of.told());
      present(of.atTray(), requests);
      reporter.told(nowNanos, of.told());
    } else if (ask instanceof Ask.OfCall of) {
      signals.call(of.call(), nowNanos);
    } else if (ask instanceof Ask.Silence of && signals.silence(of.cause(), nowNanos)) {
      silent.add(of);
    } else if (ask instanceof Ask.Correct c && correctable(c).isEmpty()) {
      probes.correct(c.role(), c.correction(), nowNanos);
    }
    return false;
  }

  /** What is asked for at the tray shows that somebody is there; from elsewhere it does not. */
  private static void present(boolean atTray, EnumSet<Request> requests) {
    if (atTray) {
      requests.add(Request.PRESENCE);
    }
  }

  /** No heat now, nor in the scan before: a correction must not move a limit under heat. */
  private boolean resting() {
    State now = state.state();
    return (now == State.OFF || now == State.AFTER_RUN) && !permittedBefore && !written.heat();
  }

  /** Why a correction is not taken, in words; empty where it is. */
  private String correctable(Ask.Correct ask) {
    if (!probes.fitted(ask.role())) {
      return "no such probe is fitted";
    }
    if (!ask.correction().plausible()) {
      return "no sound probe needs such a correction";
    }
    return rests ? "" : Mailbox.AT_REST_ONLY + state.state();
  }

  private boolean settable(double celsius) {
    return settings.limits().setRange().contains(celsius);
  }

  private double regulate(int elapsedMs, long nowNanos) {
    ProbeTrack bath = probes.track(ProbeRole.BATH);
    ProbeTrack plate = probes.track(ProbeRole.PLATE);
    return regulator.duty(
        new RegulatorInput(
            elapsedMs / 1000.0,
            setC,
            bath.goodCelsius(),
            bath.goodTakenNanos(),
            plate.goodCelsius(),
            plate.goodTakenNanos(),
            permittedBefore,
            written.heat(),
            nowNanos));
  }

  private InterlockInputs inputs(
      LineReadings in, int elapsedMs, Set<Request> requests, boolean atTray, long nowNanos) {
    boolean air = in.present() && in.airflow();
    Proof airflow =
        settings.airflowFitted() ? (air ? Proof.PRESENT : Proof.ABSENT) : Proof.NOT_FITTED;
    Proof tachometer =
        settings.tachometerFitted()
            ? Proof.ofTachometer(in.fanRpm(), settings.ratedRpm(), settings.limits())
            : Proof.NOT_FITTED;
    return new InterlockInputs(
        elapsedMs,
        Math.max(0, elapsedMs - PERIOD_MS),
        airflow,
        tachometer,
        probes.temperature(ProbeRole.BATH),
        probes.temperature(ProbeRole.SECOND_BATH),
        probes.temperature(ProbeRole.PLATE),
        setC,
        in.present() && in.stopCircuitClosed(),
        in.present(),
        requests,
        atTray,
        store.writable(nowNanos),
        settings.hostRequired() ? host.silentMs(nowNanos) : 0,
        watches.contactTest(),
        watches.contactsSound(),
        watches.looking(),
        level.level(),
        startUnconfirmed,
        watches.findings());
  }

  private Written write(Verdict verdict, double duty, int elapsedMs) {
    pulses =
        verdict.permitted()
            ? pulses.next(duty, elapsedMs / 1000.0, settings.cycleS(), settings.minPulseS())
            : TimeProportioner.START;
    boolean on = heater.drive(verdict.permission(), scan, pulses.on());
    outputs.safetyRelay().write(verdict.safetyRelay());
    outputs.fan().write(verdict.fan());
    outputs.buzzer().write(signals.buzzer());
    outputs.lamp().write(signals.lamp());
    watchdogLevel = !watchdogLevel;
    outputs.watchdogLine().write(watchdogLevel);
    RelayWear wear =
        written
            .wear()
            .after(on && !written.heaterOn(), verdict.safetyRelay() && !written.safetyOn());
    return new Written(
        verdict.permitted() ? duty : 0, on, verdict.safetyRelay(), watchdogLevel, wear);
  }

  private void keep(Verdict verdict) {
    KeepRecord now = verdict.next().keep();
    boolean latchMoved = !now.worn(kept.wear()).equals(kept);
    if (latchMoved || written.wear().worthKeeping(kept.wear())) {
      kept = now.worn(written.wear());
      store.offer(kept);
    }
  }

  private static Answer started(Ask.Start start, @Nullable Refusal refusal) {
    if (refusal == null) {
      return Answer.DONE;
    }
    return refusal == Refusal.CONFIRM_FIRST
        ? Answer.confirmFirst(start.unconfirmed() + ": confirm to start all the same")
        : Answer.refused(refusal.words());
  }

  private void answer(Map<Request, Refusal> refused) {
    for (Ask ask : asks) {
      if (ask instanceof Ask.OfInterlock of) {
        Refusal refusal = refused.get(of.request());
        of.answer().complete(refusal == null ? Answer.DONE : Answer.refused(refusal.words()));
      } else if (ask instanceof Ask.Start start) {
        start.answer().complete(started(start, refused.get(Request.START)));
      } else if (ask instanceof Ask.SetTemperature set) {
        set.answer()
            .complete(
                settable(set.celsius())
                    ? Answer.DONE
                    : Answer.refused(settings.limits().setRange().words()));
      } else if (ask instanceof Ask.OfLevel of) {
        boolean believed = of.told().believable();
        of.answer().complete(believed ? Answer.DONE : Answer.refused(of.told().accepted()));
      } else if (ask instanceof Ask.OfCall of) {
        of.answer().complete(Answer.DONE);
      } else if (ask instanceof Ask.Silence of) {
        boolean taken = silent.contains(of);
        of.answer().complete(taken ? Answer.DONE : Answer.refused("it does not sound"));
      } else if (ask instanceof Ask.Correct c) {
        String wrong = correctable(c);
        c.answer().complete(wrong.isEmpty() ? Answer.DONE : Answer.refused(wrong));
      }
    }
  }
}
