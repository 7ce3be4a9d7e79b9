package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.mark;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.samples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.MarkKind;
import trayward.host.session.Session;

class LogFailureTest {

  @TempDir Path folder;

  @Test
  void a_full_disk_fails_the_whole_write_and_the_log_works_again_with_room() throws LogRefused {
    try (TrayLog log = LogFile.open(folder)) {
      Session session = log.startSession(EVENING, true);
      marked(log, MarkKind.IN, session, 1);
      // SQLite gives a file that may grow no further the same error as a disk that is full.
      pages(log, 0);
      LogFailed failed =
          assertThrows(LogFailed.class, () -> log.addTrace(session.id(), samples(0, 5000)));
      assertEquals(log.file() + " could not be written: the disk is full.", failed.getMessage());
      assertEquals(0, log.counts().traceSamples(), "nothing half written");
      assertTrue(log.currentPrint().isPresent(), "reading goes on");
      assertThrows(LogFailed.class, () -> log.addTrace(session.id(), samples(0, 5000)));
      pages(log, 100_000);
      assertEquals(5000, log.addTrace(session.id(), samples(0, 5000)));
      assertInstanceOf(MarkResult.Marked.class, mark(log, MarkKind.PULL, session, 50));
    }
    LogFile.open(folder).close();
  }

  @Test
  void a_program_error_within_a_write_rolls_it_back_and_stays_what_it_is() throws LogRefused {
    try (TrayLog log = LogFile.open(folder)) {
      assertThrows(
          IllegalStateException.class,
          () ->
              log.connection()
                  .write(
                      handle -> {
                        SessionRows.start(handle, EVENING, true);
                        throw new IllegalStateException("half way");
                      }));
      assertEquals(0, log.counts().sessions());
      assertEquals(1, log.startSession(EVENING, true).id());
    }
  }

  @Test
  void marks_from_several_threads_at_once_make_one() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try (TrayLog log = LogFile.open(folder)) {
      Session session = log.startSession(EVENING, true);
      List<Future<MarkResult>> results = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        double atS = 10 + i / 50.0;
        results.add(threads.submit(() -> mark(log, MarkKind.IN, session, atS)));
      }
      int made = 0;
      for (Future<MarkResult> result : results) {
        made += result.get() instanceof MarkResult.Marked ? 1 : 0;
      }
      assertEquals(1, made);
      assertEquals(1, log.counts().marks());
    } finally {
      threads.shutdownNow();
    }
  }

  /** Bounds the file to so many pages, or to those it has. */
  private static void pages(TrayLog log, int most) {
    log.connection()
        .raw(
            handle ->
                handle
                    .createQuery("PRAGMA max_page_count = " + Math.max(1, most))
                    .mapTo(Integer.class)
                    .one());
  }
}
