package trayward.controller.bench;

import trayward.controller.keep.MemoryKeepStore;
import trayward.controller.port.LineReader;
import trayward.controller.port.OutputLines;
import trayward.controller.port.ProbeReader;
import trayward.controller.regulate.Fits;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayBelief;
import trayward.controller.regulate.TrayDoubt;
import trayward.controller.regulate.TrayModel;
import trayward.controller.regulate.TrayRegulator;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Limits;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;
import trayward.controller.scan.EventBox;
import trayward.controller.scan.HostPulse;
import trayward.controller.scan.Mailbox;
import trayward.controller.scan.Scan;
import trayward.controller.scan.ScanSettings;
import trayward.controller.scan.Snapshot;

/**
 * A scan as {@code run} wires it, between any tray and itself, from power-up through the warm-up
 * into the hold. Mutable; one thread.
 */
final class Hold {

  /** Period of a scan, nanoseconds. */
  static final long PERIOD = 100_000_000L;

  /** Power-up, purge, warm-up of the tray of reference, and half an hour to come to rest, scans. */
  static final int LEAD_IN = 30_000;

  /**
   * Somebody is there and says that the tray is full this often, scans: ten minutes, which is
   * sooner than presence and the level become due.
   */
  static final int ATTENDS = 6000;

  private final Mailbox mailbox = new Mailbox();
  private final EventBox events = new EventBox();
  private final HostPulse host = new HostPulse();
  private final Scan scan;
  private long scans;

  Hold(LineReader lines, ProbeReader probes, OutputLines outputs, boolean plateFitted) {
    double ceilingC = Limits.STANDARD.plateCeilingC();
    TrayModel model = TrayModel.REFERENCE;
    RoomModel room = RoomModel.REFERENCE;
    ScanSettings settings =
        new ScanSettings(
            Limits.STANDARD,
            1500,
            4,
            true,
            true,
            false,
            plateFitted,
            40,
            5,
            0.5,
            true,
            model,
            room);
    this.scan =
        new Scan(
            settings,
            lines,
            probes,
            outputs,
            new TrayRegulator(
                TrayBelief.declared(model),
                TrayDoubt.DECLARED,
                room,
                ceilingC,
                plateFitted,
                Fits.inline()),
            new MemoryKeepStore(),
            mailbox,
            events,
            host,
            0);
  }

  /** The next scan, and what the host does beside it. */
  Snapshot next() {
    if (scans == 0) {
      var unused = mailbox.ask(Request.START, true);
    }
    if (attended()) {
      var unused = mailbox.level(new LevelTold.AsSaid(), true);
    }
    host.beat(scans);
    Snapshot snapshot = scan.run(scans * PERIOD);
    scans++;
    return snapshot;
  }

  /** Whether this is a scan at which the tray is filled up, and that is said. */
  boolean attended() {
    return scans % ATTENDS == 0;
  }

  /** Scans so far. */
  long scans() {
    return scans;
  }

  /** Refuses a measurement of anything else than a hold. */
  static void check(Snapshot snapshot) {
    if (snapshot.state() != State.HOLDING || !snapshot.permitted()) {
      throw new IllegalStateException("no hold but " + snapshot);
    }
  }
}
