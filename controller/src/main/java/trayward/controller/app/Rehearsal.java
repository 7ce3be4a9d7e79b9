package trayward.controller.app;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.keep.KeepStore;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.MemoryKeepStore;
import trayward.controller.regulate.Fits;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.TrayLesson;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Request;
import trayward.controller.scan.EventBox;
import trayward.controller.scan.HostPulse;
import trayward.controller.scan.Mailbox;
import trayward.controller.scan.Scan;
import trayward.controller.scan.ScanSettings;
import trayward.controller.scan.Snapshot;
import trayward.controller.sim.Plant;
import trayward.controller.sim.SimFault;
import trayward.controller.sim.SimulatedTray;
import trayward.controller.sim.TimeOptimal;

/**
 * Runs a scenario: the real scan against the simulated tray, time handed in step by step. One
 * thread; the same scenario gives the same rows.
 */
public final class Rehearsal {

  /** Half-width of the band in which the bath counts as arrived, K. */
  public static final double BAND_K = 0.2;

  private static final long STEP_NANOS = 100_000_000L;

  /** An attended rehearsal renews presence this often, scans: ten minutes. */
  private static final long PRESENCE_SCANS = 6000;

  /** What is told as it happens. */
  public interface Listener {

    /** A row every 0.1 s of plant time. */
    void row(RehearsalRow row);

    /** Something happened at {@code tS}. */
    void event(double tS, TrayEvent event);

    /**
     * The bath's course begins anew: heat is permitted for the first time ({@code word} "heat"), or
     * an entry disturbs it.
     *
     * @param boundS the time-optimal way from here into the band, s; empty where there is none, or
     *     it is not wanted
     */
    void turn(double tS, String word, boolean setLowered, OptionalDouble boundS);

    /** Whether the bound is wanted: it costs more than the rest of a short rehearsal. */
    default boolean wantsBounds() {
      return true;
    }

    /** Whether enough was seen, asked after each row: the rehearsal then ends before its time. */
    default boolean enough() {
      return false;
    }
  }

  private final Scenario scenario;
  private final Listener listener;
  private final Function<Scenario, Regulator> regulators;
  private final SimulatedTray tray;
  private final KeepStore store;
  private Mailbox mailbox = new Mailbox();
  private final EventBox events = new EventBox();
  private @Nullable Scan scan;
  private @Nullable Snapshot last;
  private HostPulse host = new HostPulse();
  private boolean hostLost;
  private boolean heatSeen;
  private double stalledUntilS = Double.NEGATIVE_INFINITY;
  private double setC;
  private long beat;

  /** A rehearsal that has not begun. */
  public Rehearsal(Scenario scenario, Listener listener) {
    this(scenario, listener, Rehearsal::regulator);
  }

  /**
   * The same with another regulator, to compare with.
   *
   * @param regulators makes one at each power-up
   */
  public Rehearsal(Scenario scenario, Listener listener, Function<Scenario, Regulator> regulators) {
    this(scenario, listener, regulators, new MemoryKeepStore());
  }

  /**
   * The same with a record of its own.
   *
   * @param store loaded at each power-up; what it holds outlives the power
   */
  public Rehearsal(
      Scenario scenario,
      Listener listener,
      Function<Scenario, Regulator> regulators,
      KeepStore store) {
    this.store = store;
    this.scenario = scenario;
    this.listener = listener;
    this.regulators = regulators;
    this.tray =
        new SimulatedTray(
            scenario.plant(),
            scenario.bathProbe(),
            scenario.secondProbe(),
            scenario.plateProbe(),
            scenario.seed(),
            0);
    this.setC = scenario.control().setC();
    this.scan = powerUp(0);
  }

  private Scan powerUp(long nowNanos) {
    host = new HostPulse();
    mailbox = new Mailbox(); // what was asked of the program that lost its power is lost with it
    stalledUntilS = Double.NEGATIVE_INFINITY;
    TrayPrior prior = prior();
    ScanSettings settings =
        TrayTables.scanSettings(
            scenario.limits(),
            scenario.fan(),
            scenario.control(),
            scenario.secondProbe().present(),
            scenario.plateProbe().present(),
            scenario.model(),
            scenario.room(),
            prior.belief().model());
    Regulator regulator = regulators.apply(scenario);
    return new Scan(
        settings, tray, tray, tray.outputs(), regulator, store, mailbox, events, host, nowNanos);
  }

  /** The regulator that the scenario's control table names. */
  public static Regulator regulator(Scenario scenario) {
    return Regulators.of(
        scenario.control(),
        scenario.plateProbe().present(),
        TrayPrior.of(scenario.model(), scenario.learned()),
        scenario.room(),
        scenario.limits(),
        Fits.inline());
  }

  private TrayPrior prior() {
    return TrayPrior.of(scenario.model(), scenario.learned());
  }

  /** What was learned of the tray, where a warm-up was seen whole and is to be believed. */
  public Optional<LearnedTray> learned() {
    Snapshot now = last;
    return now == null
        ? Optional.empty()
        : now.tray()
            .lesson()
            .filter(TrayLesson::complete)
            .map(
                l ->
                    prior().proposal(scenario.trayName(), 0, scenario.model().heaterW(), l.found()))
            .filter(t -> LearnedBounds.wrong(t, scenario.model().areaM2()).isEmpty());
  }

  /** Runs it whole. */
  public void run() {
    List<ScenarioEntry> entries = scenario.entries();
    long steps = Math.round(scenario.durationS() * 10);
    int next = 0;
    for (long k = 0; k <= steps && !listener.enough(); k++) {
      double t = k / 10.0;
      long now = k * STEP_NANOS;
      tray.advanceTo(now);
      while (next < entries.size() && entries.get(next).atS() <= t + 1e-9) {
        apply(entries.get(next++), t, now);
      }
      scanOnce(k, t, now);
      listener.row(row(t));
    }
  }

  private void scanOnce(long k, double t, long now) {
    if (scan == null || t < stalledUntilS - 1e-9) {
      return;
    }
    if (!hostLost) {
      host.beat(++beat);
    }
    if (scenario.control().attended() && k % PRESENCE_SCANS == 0) {
      var unused = mailbox.ask(Request.PRESENCE, true);
    }
    Snapshot snapshot = scan.run(now);
    last = snapshot;
    for (TrayEvent event : events.take()) {
      listener.event(t, event);
    }
    if (snapshot.permitted() && !heatSeen) {
      heatSeen = true;
      turn(t, "heat", false);
    }
  }

  private void turn(double t, String word, boolean lowered) {
    OptionalDouble bound =
        listener.wantsBounds()
            ? TimeOptimal.secondsToBand(
                tray.plant(), setC, scenario.limits().get(Limit.PLATE_HARD_C), BAND_K)
            : OptionalDouble.empty();
    listener.turn(t, word, lowered, bound);
  }

  private void apply(ScenarioEntry entry, double t, long now) {
    boolean lowered = false;
    if (entry instanceof ScenarioEntry.Ask ask) {
      ask(ask, t, now);
    } else if (entry instanceof ScenarioEntry.SetTemperature set) {
      lowered = set(set, t, now);
    } else if (entry instanceof ScenarioEntry.Cover cover) {
      tray.plant().cover(cover.on());
    } else if (entry instanceof ScenarioEntry.Pour pour) {
      tray.plant().pour(pour.litres(), pour.celsius());
      if (pour.told()) {
        var unused = mailbox.level(new LevelTold.Poured(pour.litres()), true);
      }
    } else if (entry instanceof ScenarioEntry.ConfirmLevel confirm) {
      confirm(confirm, t, now);
    } else if (entry instanceof ScenarioEntry.Sheet sheet) {
      tray.plant().sheet(sheet.heatCapacityJPerK(), sheet.celsius());
    } else if (entry instanceof ScenarioEntry.Mark mark) {
      tell(t, now, EventKind.MARK, mark.kind(), "");
      var unused = mailbox.ask(Request.PRESENCE, true);
    } else if (entry instanceof ScenarioEntry.TrayFault fault) {
      fault(fault, now);
    } else if (entry instanceof ScenarioEntry.HostLost lost) {
      hostLost = lost.begins();
    } else if (entry instanceof ScenarioEntry.ScanStall stall) {
      stalledUntilS = t + stall.seconds();
    }
    if (!(entry instanceof ScenarioEntry.Ask
        || entry instanceof ScenarioEntry.Mark
        || entry instanceof ScenarioEntry.ConfirmLevel)) {
      tell(t, now, kindOf(entry), entry.word(), detail(entry));
    }
    if (entry.disturbs()) {
      turn(t, entry.word(), lowered);
    }
  }

  private void ask(ScenarioEntry.Ask ask, double t, long now) {
    if (scan == null) {
      tell(t, now, EventKind.REFUSED, ask.request().name(), "no power");
      return;
    }
    var unused = mailbox.ask(ask.request(), true);
  }

  private void confirm(ScenarioEntry.ConfirmLevel confirm, double t, long now) {
    if (scan == null) {
      tell(t, now, EventKind.REFUSED, "CONFIRM_LEVEL", "no power");
      return;
    }
    var unused = mailbox.level(confirm.told(), true);
  }

  private boolean set(ScenarioEntry.SetTemperature set, double t, long now) {
    boolean settable = scenario.limits().setRange().contains(set.celsius());
    if (scan == null || !settable) {
      String why = settable ? "no power" : "the set temperature is out of its range";
      tell(t, now, EventKind.REFUSED, set.word(), why);
      return false;
    }
    var unused = mailbox.setTemperature(set.celsius(), true);
    boolean lowered = set.celsius() < setC;
    setC = set.celsius();
    return lowered;
  }

  private void fault(ScenarioEntry.TrayFault fault, long now) {
    tray.fault(fault.kind(), fault.begins(), fault.value());
    if (fault.kind() == SimFault.POWER_LOSS) {
      // Memory is lost with the power; what was asked and not yet read is lost too.
      scan = fault.begins() ? null : powerUp(now);
      if (!fault.begins()) {
        setC = scenario.control().setC();
      }
    }
  }

  private static EventKind kindOf(ScenarioEntry entry) {
    boolean fault =
        entry instanceof ScenarioEntry.TrayFault
            || entry instanceof ScenarioEntry.HostLost
            || entry instanceof ScenarioEntry.ScanStall
            || entry instanceof ScenarioEntry.WallClockStep;
    return fault ? EventKind.FAULT : EventKind.ACTION;
  }

  private static String detail(ScenarioEntry entry) {
    if (entry instanceof ScenarioEntry.TrayFault fault) {
      return fault.begins() ? "begins" : "ends";
    }
    if (entry instanceof ScenarioEntry.HostLost lost) {
      return lost.begins() ? "begins" : "ends";
    }
    return "";
  }

  private void tell(double t, long now, EventKind kind, String subject, String detail) {
    listener.event(t, new TrayEvent(now, kind, subject, detail));
  }

  private RehearsalRow row(double t) {
    String state =
        scan == null
            ? "NO_POWER"
            : t < stalledUntilS - 1e-9 || last == null ? "STALLED" : last.state().name();
    return new RehearsalRow(
        t,
        tray.plant().bathC(),
        tray.plant().plateC(),
        last,
        setC,
        state,
        tray.heaterContact(),
        tray.safetyContact(),
        tray.watchdogLine(),
        tray.heatW(),
        tray.readRpm(),
        tray.flowM3PerH(),
        tray.trueAirflow(),
        tray.plant().liquidL(),
        tray.plant().evaporatedMl());
  }

  /** A copy of the thermal truth as it stands, for looking ahead. */
  public Plant plantNow() {
    return new Plant(tray.plant());
  }

  /** Electrical energy put in so far, J. */
  public double energyJ() {
    return tray.plant().energyJ();
  }

  /** Closings and openings of the heater relay so far. */
  public long relayOperations() {
    return tray.relayOperations();
  }
}
