package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.event.TripCause;

/** SR-12: a record that could not be written is tried again, so that a lockout can be left. */
class FileKeepStoreRetryTest {

  private static final KeepRecord STORE_FAILED =
      new KeepRecord(
          Set.of(TripCause.STORE_FAILED), Optional.of(TripCause.STORE_FAILED), true, true);

  @TempDir Path folder;

  private static boolean becomes(FileKeepStore store, boolean writable) {
    long patience = System.nanoTime() + 20_000_000_000L;
    while (store.writable(0) != writable && System.nanoTime() < patience) {
      LockSupport.parkNanos(1_000_000L);
    }
    return store.writable(0) == writable;
  }

  @Test
  @Verifies(value = "SR-12", side = Verifies.Side.ALLOWS)
  void onceTheFolderIsMendedTheLastRecordIsWrittenThoughNoNewOneIsOffered() throws IOException {
    Path file = folder.resolve("keep.txt");
    Path inTheWay = Files.createDirectory(folder.resolve("keep.txt.new"));
    try (FileKeepStore store = new FileKeepStore(file)) {
      store.offer(STORE_FAILED);
      assertTrue(becomes(store, false), "the failure was not seen");
      Files.delete(inTheWay);
      assertTrue(becomes(store, true), "it was not tried again");
      assertEquals(new KeepLoad.Loaded(STORE_FAILED), store.load());
    }
  }
}
