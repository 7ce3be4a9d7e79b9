package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.Print;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;

/** Logs and what stands in them, for tests. */
final class LogScenes {

  static final Instant EVENING = Instant.parse("2026-03-01T20:00:00Z");

  private LogScenes() {}

  static Moment at(double sessionS) {
    return new Moment(sessionS, EVENING.plusMillis(Math.round(sessionS * 1000)));
  }

  static MarkResult mark(TrayLog log, MarkKind kind, Session session, double sessionS) {
    return log.mark(kind, session.id(), at(sessionS), "pedal", OptionalDouble.of(40.06));
  }

  /** Makes a mark that must be accepted. */
  static Print marked(TrayLog log, MarkKind kind, Session session, double sessionS) {
    return assertInstanceOf(MarkResult.Marked.class, mark(log, kind, session, sessionS)).print();
  }

  /** One plausible sample a second. */
  static List<TraceSample> samples(int fromS, int count) {
    List<TraceSample> samples = new ArrayList<>(count);
    for (int i = fromS; i < fromS + count; i++) {
      double bathC = 40 + 0.05 * Math.sin(i / 30.0);
      double duty = 0.3 + 0.1 * Math.sin(i / 7.0);
      samples.add(new TraceSample(i + 0.003, bathC, bathC + 6.2, 40, duty, "HOLDING", true));
    }
    return samples;
  }

  /** A closed log of one print and enough trace for many pages. */
  static Path closedLog(Path folder) throws LogRefused {
    try (TrayLog log = LogFile.open(folder)) {
      Session session = log.startSession(EVENING, true);
      log.addTrace(session.id(), samples(0, 4000));
      marked(log, MarkKind.IN, session, 100);
      marked(log, MarkKind.PULL, session, 400);
      log.endSession(session.id(), EVENING.plusSeconds(4000), "stopped");
    }
    return folder.resolve(LogFile.NAME);
  }

  /** The refusal that opening the folder meets. */
  static LogRefused refusal(Path folder) {
    return assertThrows(LogRefused.class, () -> LogFile.open(folder).close());
  }

  /** Another program's connection to a file. */
  static Connection otherProgram(Path file) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  /** Lets another program do something to a file. */
  static void otherProgramDoes(Path file, String sql) throws SQLException {
    try (Connection other = otherProgram(file);
        Statement statement = other.createStatement()) {
      statement.execute(sql);
    }
  }

  /** Overwrites part of a file. */
  static void garble(Path file, int from, int count) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    for (int i = from; i < from + count; i++) {
      bytes[i] = (byte) 0xa5;
    }
    Files.write(file, bytes);
  }
}
