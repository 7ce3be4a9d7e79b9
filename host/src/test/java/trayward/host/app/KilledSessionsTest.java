package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.Print;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;
import trayward.host.store.BookModel;
import trayward.host.store.LogCopies;
import trayward.host.store.LogFile;
import trayward.host.store.LogReader;

/**
 * The real program killed with SIGKILL at random moments of a session, over and over on one log:
 * what was answered is there, little of the trace is gone, and nothing is half-written.
 */
@Tag("full")
@Timeout(7200)
class KilledSessionsTest {

  /** How often; the system property makes it fewer for a look. */
  private static final int KILLS = Integer.getInteger("trayward.kills", 200);

  /** Most of a trace that may be lost, s: its samples are a second apart. */
  private static final double LOST_MAX_S = 2;

  /** Latest kill after the first mark, ms. */
  private static final int LATEST_MS = 4000;

  private static final List<String> KINDS = List.of("in", "emergence", "pull");
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  /** A mark as it was answered. */
  private record Answered(long print, String kind, Instant at) {}

  /** What one life of the program came to: what it answered, and when it was killed. */
  private record Life(List<Answered> answered, Instant killed) {}

  private Path config() throws IOException {
    String text =
        """
        [server]
        port = 0
        [log]
        folder = "%s/data"
        [fan]
        spin_up_s = 0.5
        spin_down_s = 0.5
        """;
    return Files.writeString(folder.resolve("tray.toml"), text.formatted(folder));
  }

  /** One life: a session begins, marks follow one another, and the end comes at any moment. */
  private static Life live(Path config, Random random) throws Exception {
    try (RunningTrayward program = RunningTrayward.start(config)) {
      program.send("POST", "/api/commands/acknowledge", "");
      program.send("POST", "/api/commands/reset", "");
      program.send("POST", "/api/commands/start", "");
      CompletableFuture<Instant> killed = new CompletableFuture<>();
      CompletableFuture.delayedExecutor(random.nextInt(LATEST_MS), TimeUnit.MILLISECONDS)
          .execute(() -> killed.complete(kill(program)));
      List<Answered> answered = new ArrayList<>();
      for (int i = 0; !killed.isDone(); i++) {
        mark(program, KINDS.get(i % 3), answered);
      }
      return new Life(answered, killed.get());
    }
  }

  private static Instant kill(RunningTrayward program) {
    try {
      Instant at = Instant.now();
      program.signal("KILL");
      return at;
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private static void mark(RunningTrayward program, String kind, List<Answered> answered)
      throws InterruptedException {
    try {
      HttpResponse<String> answer =
          program.send("POST", "/api/marks", "{\"kind\": \"" + kind + "\"}");
      if (answer.statusCode() / 100 == 2) {
        JsonNode print = JSON.readTree(answer.body());
        for (JsonNode mark : print.path("marks")) {
          if (mark.path("kind").asText().equals(kind)) {
            Instant at = Instant.parse(mark.path("at").asText());
            answered.add(new Answered(print.path("id").asLong(), kind, at));
          }
        }
      }
    } catch (InterruptedException e) {
      throw e;
    } catch (Exception e) {
      // It is dead; what it did not answer nobody relies on.
    }
  }

  private static boolean kept(LogReader log, Answered mark) {
    return log.print(mark.print())
        .map(Print::marks)
        .filter(
            marks ->
                marks.stream()
                    .anyMatch(
                        m -> m.kind().word().equals(mark.kind()) && m.wall().equals(mark.at())))
        .isPresent();
  }

  /** From the newest sample of a session to the kill, s. */
  private static double lostS(LogReader log, Session session, Instant killed) {
    double upTo = 0;
    for (TraceSample sample : log.trace(session.id(), 0, 1e6)) {
      upTo = sample.sessionS();
    }
    long afterMs = killed.toEpochMilli() - session.startedWall().toEpochMilli();
    return afterMs / 1000.0 - upTo;
  }

  @Test
  void whatWasAnsweredIsThereAndAtMostTwoSecondsOfTraceAreGone() throws Exception {
    Path config = config();
    Path data = folder.resolve("data");
    Random random = new Random(20);
    int marks = 0;
    int sessions = 0;
    double mostS = 0;
    for (int i = 1; i <= KILLS; i++) {
      Life life = live(config, random);
      try (LogReader log = LogFile.openToRead(data)) {
        for (Answered mark : life.answered()) {
          assertTrue(kept(log, mark), "life " + i + ": " + mark);
        }
        Session session = log.sessions(1, 0).get(0);
        if (session.endedWall().isEmpty()) {
          double lost = lostS(log, session, life.killed());
          mostS = Math.max(mostS, lost);
          sessions++;
        }
      }
      marks += life.answered().size();
      if (i % 20 == 0 || i == KILLS) {
        assertEquals(List.of(), LogCopies.check(data, BookModel.STANDARD).findings());
        System.out.printf(
            "%d kills: %d answered marks all there, at most %.2f s of trace lost in %d sessions%n",
            i, marks, mostS, sessions);
      }
    }
    assertTrue(marks > KILLS, "marks answered: " + marks);
    assertTrue(sessions > KILLS / 2, "sessions open at the kill: " + sessions);
    assertTrue(mostS <= LOST_MAX_S, "lost " + mostS + " s");
  }
}
