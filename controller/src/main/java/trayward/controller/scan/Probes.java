package trayward.controller.scan;

import java.util.Locale;
import java.util.Map;
import trayward.controller.calibrate.Correction;
import trayward.controller.calibrate.StandWindow;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.port.ProbeReader;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.safety.Limits;
import trayward.controller.safety.State;
import trayward.controller.safety.Temperature;
import trayward.controller.safety.ThermalInput;
import trayward.controller.sense.ProbeLimits;
import trayward.controller.sense.ProbeTrack;
import trayward.controller.sense.ReadingKind;

/** The probes of the installation through time: read, correct, classify. Scan thread only. */
final class Probes {

  private final ProbeReader reader;
  private final EventBox events;
  private final ProbeLimits bathLimits;
  private final ProbeLimits plateLimits;
  private final boolean[] fitted;
  private final ProbeTrack[] tracks = new ProbeTrack[3];
  private final RawReading[] raw = new RawReading[3];
  private final Correction[] corrections = new Correction[3];
  private final StandWindow[] windows = new StandWindow[3];
  // Made anew where they change, once a second, and not in each scan.
  private final Temperature[] temperatures = new Temperature[3];
  private final ThermalInput.Sample[] samples = new ThermalInput.Sample[3];
  private final ProbeView[] views = new ProbeView[3];

  Probes(
      ProbeReader reader,
      ScanSettings settings,
      Map<ProbeRole, Correction> corrected,
      EventBox events,
      long nowNanos) {
    this.reader = reader;
    this.events = events;
    Limits limits = settings.limits();
    this.bathLimits = ProbePlaces.of(ProbeRole.BATH, limits);
    this.plateLimits = ProbePlaces.of(ProbeRole.PLATE, limits);
    this.fitted = new boolean[] {true, settings.secondBathFitted(), settings.plateFitted()};
    for (ProbeRole role : ROLES) {
      int i = index(role);
      tracks[i] = ProbeTrack.start(nowNanos);
      raw[i] = RawReading.failed(RawReading.Kind.ABSENT, nowNanos);
      corrections[i] = corrected.getOrDefault(role, Correction.NONE);
      windows[i] = new StandWindow();
      judged(i);
      views[i] = seen(i);
    }
  }

  void read(long nowNanos) {
    for (ProbeRole role : ROLES) {
      int i = index(role);
      if (fitted[i]) {
        ProbeTrack last = tracks[i];
        ProbeLimits limits = role == ProbeRole.PLATE ? plateLimits : bathLimits;
        raw[i] = reader.latest(role, nowNanos);
        tracks[i] = last.next(raw[i], nowNanos, limits, corrections[i]);
        if (!tracks[i].equals(last)) {
          judged(i);
        }
        ReadingKind before = last.reading().kind();
        ReadingKind now = tracks[i].reading().kind();
        if (now == ReadingKind.VALID) {
          windows[i].add(raw[i].celsius(), raw[i].takenNanos());
        }
        if (now != before) {
          events.put(new TrayEvent(nowNanos, EventKind.PROBE, role.name(), now.name()));
        }
      }
    }
  }

  /** From the next scan on, a probe's readings are corrected so. */
  void correct(ProbeRole role, Correction correction, long nowNanos) {
    corrections[index(role)] = correction;
    String detail =
        correction.equals(Correction.NONE)
            ? "no correction"
            : String.format(
                Locale.ROOT,
                "corrected: slope %.4f, offset %+.2f K",
                correction.slope(),
                correction.offsetK());
    events.put(new TrayEvent(nowNanos, EventKind.NOTE, role.name(), detail));
  }

  boolean fitted(ProbeRole role) {
    return fitted[index(role)];
  }

  ProbeView view(ProbeRole role) {
    int i = index(role);
    ProbeView before = views[i];
    boolean same =
        before.raw().equals(raw[i])
            && before.reading().equals(tracks[i].reading())
            && before.correction().equals(corrections[i])
            && before.stand().equals(windows[i].stand());
    views[i] = same ? before : seen(i);
    return views[i];
  }

  private ProbeView seen(int i) {
    return new ProbeView(
        fitted[i], raw[i], tracks[i].reading(), corrections[i], windows[i].stand());
  }

  private void judged(int i) {
    ProbeTrack track = tracks[i];
    temperatures[i] =
        fitted[i]
            ? new Temperature(true, track.reading().valid(), track.goodCelsius())
            : Temperature.NOT_FITTED;
    samples[i] =
        track.everGood()
            ? new ThermalInput.Sample(track.goodCelsius(), track.goodTakenNanos())
            : ThermalInput.Sample.NONE;
  }

  ProbeTrack track(ProbeRole role) {
    return tracks[index(role)];
  }

  Temperature temperature(ProbeRole role) {
    return temperatures[index(role)];
  }

  /** What the watch over heat sees of them. */
  ThermalInput thermal(double elapsedS, boolean heatCommanded, State state) {
    return new ThermalInput(
        elapsedS,
        heatCommanded,
        state,
        sample(ProbeRole.BATH),
        sample(ProbeRole.PLATE),
        sample(ProbeRole.SECOND_BATH));
  }

  private ThermalInput.Sample sample(ProbeRole role) {
    return samples[index(role)];
  }

  private static final ProbeRole[] ROLES = ProbeRole.values();

  private static int index(ProbeRole role) {
    return switch (role) {
      case BATH -> 0;
      case SECOND_BATH -> 1;
      case PLATE -> 2;
    };
  }
}
