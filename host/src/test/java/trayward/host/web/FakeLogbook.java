package trayward.host.web;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.MarkRule;
import trayward.host.session.Moment;
import trayward.host.session.Session;
import trayward.host.store.MarkResult;
import trayward.host.store.TrayLog;

/** A logbook over a real log, with the session's time in the test's hand. */
final class FakeLogbook implements Logbook {

  private static final Instant WALL = Instant.parse("2030-01-02T03:04:05Z");

  private final TrayLog log;
  volatile double nowS;
  volatile boolean healthy = true;

  FakeLogbook(TrayLog log) {
    this.log = log;
  }

  @Override
  public MarkResult mark(MarkKind kind, String by) {
    Session session = beginSession().orElseThrow();
    return log.mark(kind, session.id(), new Moment(nowS, WALL), by, OptionalDouble.of(39.5));
  }

  @Override
  public Optional<Mark> undo() {
    return log.openSession().flatMap(s -> log.undoLastMark(s.id(), WALL));
  }

  @Override
  public MarkResult pedalPressed() {
    Session session = beginSession().orElseThrow();
    return mark(MarkRule.pressed(log.latestPrint(session.id()), nowS), "pedal");
  }

  @Override
  public Optional<Mark> pedalHeld() {
    return undo();
  }

  @Override
  public Optional<Session> beginSession() {
    return Optional.of(log.openSession().orElseGet(() -> log.startSession(WALL, true)));
  }

  @Override
  public OptionalDouble sessionS() {
    return log.openSession().isPresent() ? OptionalDouble.of(nowS) : OptionalDouble.empty();
  }

  @Override
  public boolean healthy() {
    return healthy;
  }
}
