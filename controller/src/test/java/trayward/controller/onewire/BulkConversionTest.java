package trayward.controller.onewire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;

/** All probes of a bus in one conversion where the kernel offers it, one by one where not. */
class BulkConversionTest {

  private static final String ONE = "28-000000000001";
  private static final String TWO = "28-000000000002";
  private static final long MILLI = 1_000_000L;

  @TempDir private Path root;
  private long now = 1_000 * MILLI;
  private long conversionMs = 750;
  private boolean refuses;
  private final List<String> triggered = new ArrayList<>();

  private void trigger(Path file) throws IOException {
    if (refuses) {
      throw new IOException("not permitted");
    }
    triggered.add(root.relativize(file).getName(0).toString());
    now += conversionMs * MILLI;
  }

  @BeforeEach
  void twoProbesOnOneBus() throws Exception {
    for (String name : List.of(ONE, TWO)) {
      Path folder = Files.createDirectories(root.resolve(name));
      Files.writeString(folder.resolve("w1_slave"), Frames.steps(320));
    }
  }

  private Path master(int number, String... probes) throws Exception {
    Path master = Files.createDirectories(root.resolve("w1_bus_master" + number));
    Files.writeString(master.resolve("therm_bulk_read"), "0\n");
    for (String name : probes) {
      Files.createDirectories(master.resolve(name));
    }
    return master;
  }

  private BulkConversion bulk() {
    return new BulkConversion(root, () -> now, this::trigger);
  }

  private OneWireProbes probes() {
    return new OneWireProbes(
        root,
        Map.of(ProbeRole.BATH, ONE, ProbeRole.PLATE, TWO),
        OneWireProbes.Reads.FITTED,
        () -> now,
        this::trigger);
  }

  @Test
  void bothReadingsAreOfTheMomentInWhichTheirConversionBegan() throws Exception {
    master(1, ONE, TWO);
    try (OneWireProbes probes = probes()) {
      probes.readAll();
      assertEquals(RawReading.frame(20, 1_000 * MILLI), probes.latest(ProbeRole.BATH, now));
      assertEquals(RawReading.frame(20, 1_000 * MILLI), probes.latest(ProbeRole.PLATE, now));
      assertEquals(1_750 * MILLI, now);
      probes.readAll();
      assertEquals(1_750 * MILLI, probes.latest(ProbeRole.BATH, now).takenNanos());
    }
    assertEquals(List.of("w1_bus_master1", "w1_bus_master1"), triggered);
  }

  @Test
  void withoutTheKernelsFileNothingIsTriggeredAndProbesAreReadOneByOne() throws Exception {
    Files.createDirectories(root.resolve("w1_bus_master1"));
    try (OneWireProbes probes = probes()) {
      probes.readAll();
      assertEquals(RawReading.frame(20, 1_000 * MILLI), probes.latest(ProbeRole.BATH, now));
    }
    assertEquals(List.of(), triggered);
  }

  @Test
  void aRootThatIsNotThereIsNoBus() {
    BulkConversion bulk = new BulkConversion(root.resolve("gone"), () -> now, this::trigger);
    assertEquals(Map.of(), bulk.convert(List.of(ONE)));
  }

  @Test
  void aBusThatRefusesIsLeftAloneForAMinuteAndOwesNothing() throws Exception {
    master(1, ONE, TWO);
    BulkConversion bulk = bulk();
    refuses = true;
    assertEquals(Map.of(), bulk.convert(List.of(ONE, TWO)));
    assertFalse(bulk.owed(ONE));
    refuses = false;
    now += 59_999 * MILLI;
    assertEquals(Map.of(), bulk.convert(List.of(ONE, TWO)));
    assertEquals(List.of(), triggered);
    now += MILLI;
    assertEquals(Map.of(ONE, now, TWO, now), bulk.convert(List.of(ONE, TWO)));
  }

  /** The driver marks its probes and reports success although nothing was converted. */
  @Test
  void aTriggerTooFastForAConversionIsNotBelievedAndItsMarksAreReadAway() throws Exception {
    master(1, ONE, TWO);
    BulkConversion bulk = bulk();
    conversionMs = 49;
    assertEquals(Map.of(), bulk.convert(List.of(ONE, TWO)));
    assertTrue(bulk.owed(ONE));
    assertFalse(bulk.owed(ONE), "paid once");
    assertTrue(bulk.owed(TWO));
    conversionMs = 50;
    now += 60_000 * MILLI;
    assertEquals(2, bulk.convert(List.of(ONE, TWO)).size());
    assertFalse(bulk.owed(ONE), "it is read next");
  }

  /** Of an owed read nothing is used: the next one converts, and is of its own moment. */
  @Test
  void anOwedReadIsMadeBeforeTheOneThatCounts() throws Exception {
    master(1, ONE, TWO);
    conversionMs = 0;
    try (OneWireProbes probes = probes()) {
      probes.readAll();
      assertEquals(RawReading.frame(20, now), probes.latest(ProbeRole.BATH, now));
    }
  }

  @Test
  void aBusWithoutOurProbesIsNotTriggeredAndEachBusConvertsItsOwn() throws Exception {
    master(1, ONE);
    master(2, TWO);
    master(3, "28-000000000009");
    Map<String, Long> began = bulk().convert(List.of(ONE, TWO));
    assertEquals(2, triggered.size());
    assertFalse(triggered.contains("w1_bus_master3"));
    assertEquals(List.of(1_000 * MILLI, 1_750 * MILLI), began.values().stream().sorted().toList());
  }

  @Test
  void aMasterThatListsNoProbeMayBeTheBusOfAll() throws Exception {
    master(1);
    assertEquals(Map.of(ONE, now, TWO, now), bulk().convert(List.of(ONE, TWO)));
  }

  @Test
  void theKernelsFileGetsExactlyTheEightBytesItTakes() throws Exception {
    Path file = master(1).resolve("therm_bulk_read");
    Trigger.toFile(file);
    assertEquals("trigger\n", Files.readString(file));
    Files.delete(file);
    org.junit.jupiter.api.Assertions.assertThrows(IOException.class, () -> Trigger.toFile(file));
    assertTrue(Files.notExists(file), "it never makes one");
  }
}
