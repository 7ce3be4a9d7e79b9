package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.fail;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.TrayEvent;
import trayward.controller.keep.KeepStore;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLine;
import trayward.controller.port.OutputLines;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.regulate.PidRegulator;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.Limits;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.ProbeParameters;
import trayward.controller.sim.SimulatedTray;

/**
 * A scan with the simulated tray of reference before it, driven by a time that is a value. Output
 * lines are recorded; a part can be broken, so that it throws when it is next used.
 */
final class Deck {

  static final long PERIOD = 100_000_000L;

  /** What can be broken. */
  enum Part {
    LINES,
    PROBES,
    REGULATOR,
    STORE,
    HEATER,
    SAFETY,
    WATCHDOG,
    FAN,
    BUZZER,
    LAMP
  }

  /** An output line that remembers. */
  final class Line implements OutputLine {
    private final Part part;
    private final OutputLine to;
    boolean active;
    int changes;

    Line(Part part, OutputLine to) {
      this.part = part;
      this.to = to;
    }

    @Override
    public void write(boolean now) {
      hit(part);
      changes += now == active ? 0 : 1;
      active = now;
      to.write(now);
    }
  }

  final SimulatedTray tray =
      new SimulatedTray(
          PlantParameters.REFERENCE,
          ProbeParameters.BATH,
          ProbeParameters.NO_SECOND,
          ProbeParameters.PLATE,
          1,
          0);
  final Mailbox mailbox;
  final EventBox events = new EventBox();
  final HostPulse host = new HostPulse();
  final List<TrayEvent> told = new ArrayList<>();
  final Line heater = new Line(Part.HEATER, tray.outputs().heaterRelay());
  final Line safety = new Line(Part.SAFETY, tray.outputs().safetyRelay());
  final Line watchdog = new Line(Part.WATCHDOG, tray.outputs().watchdogLine());
  final Line fan = new Line(Part.FAN, tray.outputs().fan());
  final Line buzzer = new Line(Part.BUZZER, tray.outputs().buzzer());
  final Line lamp = new Line(Part.LAMP, tray.outputs().lamp());

  /** What the lines say instead of the tray's own readings. */
  UnaryOperator<LineReadings> lines = UnaryOperator.identity();

  /** What the bath probe says instead of its own reading. */
  UnaryOperator<RawReading> bathProbe = UnaryOperator.identity();

  volatile @Nullable Part broken;
  private final KeepStore store = new HookedStore(() -> hit(Part.STORE));
  private final boolean hostRequired;
  Scan scan;
  long now;
  @Nullable Snapshot last;

  Deck() {
    this(false);
  }

  Deck(boolean hostRequired) {
    this(hostRequired, new Mailbox());
  }

  Deck(boolean hostRequired, Mailbox mailbox) {
    this.hostRequired = hostRequired;
    this.mailbox = mailbox;
    this.scan = made();
  }

  private void hit(Part part) {
    if (broken == part) {
      throw new IllegalStateException(part + " is broken");
    }
  }

  private Scan made() {
    ScanSettings settings =
        new ScanSettings(
            Limits.STANDARD,
            1500,
            4,
            true,
            true,
            false,
            true,
            40,
            5,
            0.5,
            hostRequired,
            TrayModel.REFERENCE,
            RoomModel.REFERENCE);
    Regulator pid = new PidRegulator(TrayModel.REFERENCE, RoomModel.REFERENCE, 68);
    return new Scan(
        settings,
        t -> {
          hit(Part.LINES);
          return lines.apply(tray.read(t));
        },
        (ProbeRole role, long t) -> {
          hit(Part.PROBES);
          RawReading raw = tray.latest(role, t);
          return role == ProbeRole.BATH ? bathProbe.apply(raw) : raw;
        },
        new OutputLines(heater, safety, watchdog, fan, buzzer, lamp),
        in -> {
          hit(Part.REGULATOR);
          return pid.duty(in);
        },
        store,
        mailbox,
        events,
        host,
        now);
  }

  /** Power lost and back at once: a new controller with the same record. */
  void powerLossAndBack() {
    scan = made();
  }

  Snapshot scan() {
    return scanAfter(PERIOD);
  }

  Snapshot scanAfter(long nanos) {
    now += nanos;
    Snapshot snapshot = scan.run(now);
    told.addAll(events.take());
    last = snapshot;
    return snapshot;
  }

  Snapshot run(double seconds) {
    Snapshot snapshot = scan();
    for (long left = Math.round(seconds * 10) - 1; left > 0; left--) {
      snapshot = scan();
    }
    return snapshot;
  }

  CompletableFuture<Answer> ask(Request request) {
    return mailbox.ask(request, true);
  }

  /** Scans until a state is reached, at most twenty minutes. */
  Deck until(State wanted) {
    for (int left = 12_000; left > 0; left--) {
      if (scan().state() == wanted) {
        return this;
      }
    }
    return fail(wanted + " was not reached");
  }

  /** Started by a person and heating. */
  static Deck heating() {
    Deck deck = new Deck();
    var unused = deck.ask(Request.START);
    return deck.until(State.HEATING);
  }
}
