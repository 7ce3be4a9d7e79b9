package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.event.TripCause;

/** SR-12: a record that cannot be written is known at once or after a few seconds. */
class FileKeepStoreFailureTest {

  private static final long SECOND = 1_000_000_000L;
  private static final KeepRecord AIR_LOST =
      new KeepRecord(Set.of(TripCause.AIR_LOST), Optional.of(TripCause.AIR_LOST), false, true);

  @TempDir Path folder;

  /** A folder in the way of the new file stops even a superuser, unlike permissions. */
  @Test
  @Verifies(value = "SR-12", side = Verifies.Side.WITHHOLDS)
  void aRecordThatCannotBeWrittenMakesTheStoreUnwritable() throws IOException {
    Files.createDirectory(folder.resolve("keep.txt.new"));
    FileKeepStore store = new FileKeepStore(file());
    assertTrue(store.writable(0), "nothing has failed yet");
    store.offer(AIR_LOST);
    store.close();
    assertFalse(store.writable(0));
    assertEquals(new KeepLoad.Loaded(KeepRecord.CLEAN), store.load());
  }

  @Test
  void aFolderThatIsGoneMakesTheStoreUnwritable() {
    FileKeepStore store = new FileKeepStore(folder.resolve("gone").resolve("keep.txt"));
    store.offer(KeepRecord.CLEAN);
    store.close();
    assertFalse(store.writable(0));
  }

  @Test
  void aFileThatCannotBeReplacedMakesTheStoreUnwritable() throws IOException {
    Files.createDirectory(file());
    Files.writeString(file().resolve("inside"), "x");
    offerAndCheck(false);
    Files.delete(file().resolve("inside"));
    Files.delete(file());
    offerAndCheck(true);
  }

  /** After closing nobody writes: a record offered then waits for ever. */
  @Test
  void aRecordThatWaitsLongerThanFiveSecondsCountsAsNotWritten() {
    FileKeepStore store = new FileKeepStore(file());
    store.close();
    assertTrue(store.writable(3 * SECOND));
    store.offer(AIR_LOST);
    assertTrue(store.writable(100 * SECOND), "waiting is counted from when it was first seen");
    assertTrue(store.writable(105 * SECOND));
    assertFalse(store.writable(105 * SECOND + 1));
  }

  private void offerAndCheck(boolean writable) {
    FileKeepStore store = new FileKeepStore(file());
    store.offer(KeepRecord.CLEAN);
    store.close();
    assertEquals(writable, store.writable(0));
  }

  private Path file() {
    return folder.resolve("keep.txt");
  }
}
