package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.event.TripCause;

/** SR-12. {@code close()} writes what waits, so that no test needs to wait for the writer. */
class FileKeepStoreTest {

  @TempDir Path folder;
  private FileKeepStore reader;

  @BeforeEach
  void open() {
    reader = new FileKeepStore(file());
  }

  @AfterEach
  void close() {
    reader.close();
  }

  @ParameterizedTest
  @EnumSource(TripCause.class)
  void everyCauseIsThereAgainAfterPowerLoss(TripCause cause) {
    KeepRecord record = latched(cause);
    offerAndClose(record);
    assertEquals(new KeepLoad.Loaded(record), load());
  }

  @Test
  void theNewestOfManyRecordsIsTheOneKept() throws IOException {
    FileKeepStore store = new FileKeepStore(file());
    for (TripCause cause : TripCause.values()) {
      store.offer(latched(cause));
    }
    KeepRecord last =
        new KeepRecord(
            EnumSet.allOf(TripCause.class), Optional.of(TripCause.TRAY_DRY), true, false);
    store.offer(last);
    store.close();
    assertTrue(store.writable(0));
    assertEquals(new KeepLoad.Loaded(last), load());
    assertEquals(KeepText.write(last), Files.readString(file()));
  }

  @Test
  void aRecordOfferedJustBeforeClosingIsWritten() {
    for (TripCause cause : TripCause.values()) {
      offerAndClose(latched(cause));
      assertEquals(new KeepLoad.Loaded(latched(cause)), load());
    }
  }

  @Test
  void aRecordIsReplacedWholeAndNothingIsLeftBesideIt() throws IOException {
    offerAndClose(latched(TripCause.AIR_LOST));
    offerAndClose(KeepRecord.CLEAN);
    assertEquals(new KeepLoad.Loaded(KeepRecord.CLEAN), load());
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(1, files.count());
    }
  }

  @Test
  @Verifies(value = "SR-12", side = Verifies.Side.ALLOWS)
  void whereNoRecordWasEverWrittenItIsClean() {
    assertEquals(new KeepLoad.Loaded(KeepRecord.CLEAN), load());
  }

  @Test
  void aLeftoverOfAnUnfinishedWriteIsNotTheRecord() throws IOException {
    offerAndClose(latched(TripCause.TRAY_DRY));
    Files.writeString(beside(), "trayward-keep 1\nlatc");
    assertEquals(new KeepLoad.Loaded(latched(TripCause.TRAY_DRY)), load());
  }

  @Test
  @Verifies(value = "SR-12", side = Verifies.Side.WITHHOLDS)
  void anAlteredFileIsUnreadableAndNamed() throws IOException {
    offerAndClose(latched(TripCause.AIR_LOST));
    byte[] bytes = Files.readAllBytes(file());
    for (int at = 0; at < bytes.length; at++) {
      for (int flip : new int[] {0x01, 0x20, 0x80, 0xFF}) {
        byte[] altered = bytes.clone();
        altered[at] ^= (byte) flip;
        Files.write(file(), altered);
        refusedWithItsName();
      }
    }
  }

  @Test
  void aTornOrEmptyFileIsUnreadable() throws IOException {
    byte[] bytes = KeepText.write(latched(TripCause.AIR_LOST)).getBytes(StandardCharsets.UTF_8);
    for (int length = 0; length < bytes.length; length += 7) {
      Files.write(file(), Arrays.copyOf(bytes, length));
      refusedWithItsName();
    }
    Files.write(file(), new byte[bytes.length]);
    refusedWithItsName();
  }

  @Test
  void whatIsTooLargeOrAFolderIsUnreadable() throws IOException {
    Files.write(file(), new byte[4097]);
    refusedWithItsName();
    Files.delete(file());
    Files.createDirectory(file());
    refusedWithItsName();
  }

  @Test
  void aRecordInMemoryOutlivesTheControllerThatOfferedIt() {
    MemoryKeepStore store = new MemoryKeepStore();
    assertEquals(new KeepLoad.Loaded(KeepRecord.CLEAN), store.load());
    store.offer(latched(TripCause.TRAY_DRY));
    store.close();
    assertTrue(store.writable(Long.MAX_VALUE));
    assertEquals(new KeepLoad.Loaded(latched(TripCause.TRAY_DRY)), store.load());
  }

  private void offerAndClose(KeepRecord record) {
    try (FileKeepStore store = new FileKeepStore(file())) {
      store.offer(record);
    }
  }

  private KeepLoad load() {
    return reader.load();
  }

  private void refusedWithItsName() {
    KeepLoad.Unreadable bad = assertInstanceOf(KeepLoad.Unreadable.class, load());
    assertTrue(bad.why().contains("keep.txt"), bad.why());
  }

  private Path file() {
    return folder.resolve("keep.txt");
  }

  private Path beside() {
    return folder.resolve("keep.txt.new");
  }

  private static KeepRecord latched(TripCause cause) {
    return new KeepRecord(Set.of(cause), Optional.of(cause), false, true);
  }
}
