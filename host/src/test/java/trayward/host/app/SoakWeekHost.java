package trayward.host.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import trayward.controller.app.RehearsalRow;
import trayward.controller.event.TrayEvent;
import trayward.controller.scan.Snapshot;
import trayward.host.link.Command;
import trayward.host.link.LinkAnswer;
import trayward.host.link.LinkEvent;
import trayward.host.link.TrayLink;
import trayward.host.link.TrayStatus;
import trayward.host.link.UpkeepView;
import trayward.host.session.MarkKind;
import trayward.host.store.LogFile;
import trayward.host.store.LogRefused;
import trayward.host.store.MarkResult;
import trayward.host.store.TrayLog;

/**
 * The host's recorder and log on a disk, told by a rehearsal instead of a line, in simulated time.
 * It may be closed in order, or left as a killed process leaves its file. One thread.
 */
final class SoakWeekHost implements TrayLink {

  private static final Instant MONDAY = Instant.parse("2026-01-05T00:00:00Z");

  private final Path root;
  private final Map<MarkKind, Integer> marks = new EnumMap<>(MarkKind.class);
  private final List<LinkEvent> events = new ArrayList<>();
  private Path folder;
  private TrayLog log;
  private Recorder recorder;
  private boolean away;
  private int lives = 1;
  private double nowS;
  private Optional<TrayStatus> status = Optional.empty();

  SoakWeekHost(Path root) throws LogRefused {
    this.root = root;
    this.folder = root.resolve("life-1");
    this.log = LogFile.open(folder);
    this.recorder = recorder();
  }

  private Recorder recorder() {
    return new Recorder(this, log, new Wall(), Runnable::run);
  }

  /** Simulated date and time of day. */
  private final class Wall extends Clock {
    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return MONDAY.plusMillis(Math.round(nowS * 1000));
    }
  }

  /** What the controller shows now; the recorder looks as often as it does on a line. */
  void row(RehearsalRow row) {
    nowS = row.tS();
    Snapshot s = row.snapshot();
    boolean silent = row.state().equals("NO_POWER") || row.state().equals("STALLED");
    status = s == null || silent ? Optional.empty() : Optional.of(SoakWeekStatus.of(s));
    if (!away) {
      recorder.tick();
    }
    if (!recorder.healthy()) {
      throw new IllegalStateException("the log failed at " + nowS + " s");
    }
  }

  void event(TrayEvent event, Snapshot s) {
    if (!away) {
      events.add(
          new LinkEvent(
              s.uptimeS(event.atNanos()), event.kind().name(), event.subject(), event.detail()));
    }
  }

  /** A person marks, where there is a host to hear it. */
  void mark(String kind) {
    MarkKind known = MarkKind.of(kind).orElseThrow();
    if (!away && recorder.mark(known, "page") instanceof MarkResult.Marked) {
      marks.merge(known, 1, Integer::sum);
    }
  }

  /** The host ends: in order, or as a process ends that is killed. */
  void leave(boolean inOrder) {
    away = true;
    lives++;
    if (inOrder) {
      recorder.close();
      log.close();
      return;
    }
    try {
      // What is in the file and beside it now is what a kill leaves. The lock and the descriptors
      // of a process go with it; here both are given back by closing the old file afterwards.
      Path left = Files.createDirectories(root.resolve("life-" + lives));
      for (String name : List.of(LogFile.NAME, LogFile.NAME + "-wal")) {
        Files.copy(folder.resolve(name), left.resolve(name));
      }
      log.close();
      try (Stream<Path> old = Files.list(folder)) {
        for (Path file : old.toList()) {
          Files.delete(file);
        }
      }
      folder = left;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A new host on what the last one left. */
  void comeBack() {
    try {
      log = LogFile.open(folder);
    } catch (LogRefused e) {
      throw new IllegalStateException(e);
    }
    events.clear();
    recorder = recorder();
    away = false;
  }

  /** Ends it in order. */
  void close() {
    if (!away) {
      recorder.close();
      log.close();
    }
  }

  /** Where the log is now. */
  Path folder() {
    return folder;
  }

  /** Marks that were answered as kept. */
  int marksKept() {
    return marks.values().stream().mapToInt(Integer::intValue).sum();
  }

  int lives() {
    return lives;
  }

  @Override
  public Optional<TrayStatus> latest() {
    return status;
  }

  @Override
  public List<LinkEvent> takeEvents() {
    List<LinkEvent> taken = List.copyOf(events);
    events.clear();
    return taken;
  }

  @Override
  public LinkAnswer send(Command command) {
    return new LinkAnswer.Refused("this printer asks the controller itself");
  }

  @Override
  public LinkAnswer start(boolean confirmed) {
    return send(Command.START);
  }

  @Override
  public UpkeepView upkeep() {
    return new UpkeepView("2026-01-05", true, "", List.of());
  }

  @Override
  public LinkAnswer upkeepDone(String item) {
    return send(Command.PRESENCE);
  }

  @Override
  public LinkAnswer setTemperature(double celsius) {
    return send(Command.PRESENCE);
  }

  @Override
  public LinkAnswer topUp(double litres) {
    return send(Command.PRESENCE);
  }

  @Override
  public LinkAnswer confirmLevel(OptionalDouble litres) {
    return send(Command.PRESENCE);
  }

  @Override
  public void beat() {}

  @Override
  public boolean simulated() {
    return true;
  }

  @Override
  public Optional<ScanLateness> lateness() {
    return Optional.empty();
  }
}
