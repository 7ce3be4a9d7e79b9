package trayward.controller.scan;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;
import trayward.controller.keep.KeepStore;
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
import trayward.controller.safety.Level;
import trayward.controller.safety.Proof;
import trayward.controller.safety.Refusal;
import trayward.controller.safety.Request;
import trayward.controller.safety.TrayWatch;
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
  private final Interlock interlock;
  private final Probes probes;
  private final Buttons buttons = new Buttons();
  private final HostPulse host;
  private final List<Ask> asks = new ArrayList<>();

  private InterlockState state;
  private KeepRecord kept;
  private TimeProportioner pulses = TimeProportioner.START;
  private double setC;
  private boolean permittedBefore;
  private boolean heatCommanded;
  private TrayWatch watch;
  private boolean watchdogLevel;
  private long scan;
  private long lastNanos;

  /** A controller that has just been powered up at {@code nowNanos}. */
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
    this.settings = settings;
    this.lines = lines;
    this.outputs = outputs;
    this.heater = new HeaterGate(outputs.heaterRelay());
    this.regulator = regulator;
    this.store = store;
    this.mailbox = mailbox;
    this.host = host;
    this.interlock = new Interlock(settings.limits(), settings.spinDownS());
    this.probes = new Probes(probeReader, settings, events, nowNanos);
    this.setC = settings.startSetC();
    this.watch = TrayWatch.start(settings.model(), settings.room());
    KeepLoad load = store.load();
    this.state = InterlockState.powerUp(load);
    this.kept = state.keep();
    this.reporter = new Reporter(events, settings.limits());
    this.publisher = new Publisher(settings.limits(), probes);
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
    boolean atTray = requests.contains(Request.RESET);
    asks.clear();
    mailbox.drain(asks);
    for (Ask ask : asks) {
      atTray |= gather(ask, requests);
    }
    watch = watch.next(probes.thermal(elapsedMs / 1000.0, heatCommanded, state.state()));
    double duty = watch.looking() ? 0 : regulate(elapsedMs);
    InterlockInputs inputs = inputs(in, elapsedMs, requests, atTray, nowNanos);
    Verdict verdict = interlock.step(state, inputs, scan);
    boolean heaterOn = write(verdict, duty, elapsedMs);
    keep(verdict);
    reporter.report(nowNanos, state.state(), verdict, requests, pedal);
    answer(verdict.refused());
    state = verdict.next();
    permittedBefore = verdict.permitted();
    heatCommanded = heaterOn && verdict.safetyRelay();
    Written written = new Written(permittedBefore ? duty : 0, heaterOn, watchdogLevel);
    return publisher.snapshot(scan, nowNanos, in, inputs, verdict, written);
  }

  /** Opens every relay and silences the watchdog line; the fan as SR-21 wants it. */
  public void shutDown() {
    try {
      heater.open();
    } finally {
      try {
        outputs.safetyRelay().write(false);
      } finally {
        outputs.buzzer().write(false);
      }
    }
  }

  /** Whether the fan is commanded on as the last scan left it. */
  public boolean fanCommanded() {
    return state.fan().commanded();
  }

  private boolean gather(Ask ask, EnumSet<Request> requests) {
    if (ask instanceof Ask.OfInterlock of) {
      requests.add(of.request());
      return of.request() == Request.RESET && of.atTray();
    }
    if (ask instanceof Ask.SetTemperature set && settable(set.celsius())) {
      setC = set.celsius();
      requests.add(Request.PRESENCE);
    }
    return false;
  }

  private boolean settable(double celsius) {
    return settings.limits().setRange().contains(celsius);
  }

  private double regulate(int elapsedMs) {
    ProbeTrack bath = probes.track(ProbeRole.BATH);
    ProbeTrack plate = probes.track(ProbeRole.PLATE);
    return regulator.duty(
        new RegulatorInput(
            elapsedMs / 1000.0,
            setC,
            bath.goodCelsius(),
            bath.goodTakenNanos(),
            plate.goodCelsius(),
            permittedBefore));
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
        in.heaterContact(),
        in.safetyContact(),
        watch.looking(),
        Level.WELL,
        false,
        watch.findings());
  }

  private boolean write(Verdict verdict, double duty, int elapsedMs) {
    pulses =
        verdict.permitted()
            ? pulses.next(duty, elapsedMs / 1000.0, settings.cycleS(), settings.minPulseS())
            : TimeProportioner.START;
    boolean on = heater.drive(verdict.permission(), scan, pulses.on());
    outputs.safetyRelay().write(verdict.safetyRelay());
    outputs.fan().write(verdict.fan());
    outputs.buzzer().write(verdict.buzzer());
    watchdogLevel = !watchdogLevel;
    outputs.watchdogLine().write(watchdogLevel);
    return on;
  }

  private void keep(Verdict verdict) {
    KeepRecord now = verdict.next().keep();
    if (!now.equals(kept)) {
      store.offer(now);
      kept = now;
    }
  }

  private void answer(Map<Request, Refusal> refused) {
    for (Ask ask : asks) {
      if (ask instanceof Ask.OfInterlock of) {
        Refusal refusal = refused.get(of.request());
        of.answer().complete(refusal == null ? Answer.DONE : Answer.refused(refusal.words()));
      } else if (ask instanceof Ask.SetTemperature set) {
        set.answer()
            .complete(
                settable(set.celsius())
                    ? Answer.DONE
                    : Answer.refused(settings.limits().setRange().words()));
      }
    }
  }
}
