package trayward.controller.onewire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;
import trayward.controller.Verifies;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.port.RawReading.Kind;
import trayward.controller.sense.ProbeLimits;
import trayward.controller.sense.ProbeTrack;
import trayward.controller.sense.ReadingKind;

/** From the content of a probe's file to the class of its reading (SR-08), and the thread. */
@Timeout(60)
class OneWireProbesTest {

  private static final String BATH = "28-0000000000b1";
  private static final String PLATE = "28-0000000000c2";
  private static final long SECOND = 1_000_000_000L;
  private static final ProbeLimits LIMITS = new ProbeLimits(-5, 100, 8, 4 * SECOND);

  @TempDir private Path root;
  private long now = 100 * SECOND;
  private ProbeTrack track = ProbeTrack.start(now);

  private OneWireProbes probes() {
    return new OneWireProbes(root, Map.of(ProbeRole.BATH, BATH), () -> now);
  }

  private Path file(String name) throws Exception {
    return Files.createDirectories(root.resolve(name)).resolve("w1_slave");
  }

  /** The class of what a file holds, a second after a good 20 °C. */
  private ReadingKind afterTwenty(byte[] content) throws Exception {
    try (OneWireProbes probes = probes()) {
      judge(probes, Frames.steps(20 * 16).getBytes(StandardCharsets.US_ASCII));
      assertEquals(ReadingKind.VALID, track.reading().kind());
      now += SECOND;
      return judge(probes, content);
    }
  }

  private ReadingKind judge(OneWireProbes probes, byte[] content) throws Exception {
    Files.write(file(BATH), content);
    probes.readAll();
    track = track.next(probes.latest(ProbeRole.BATH, now), now, LIMITS);
    return track.reading().kind();
  }

  private ReadingKind afterTwenty(String content) throws Exception {
    return afterTwenty(content.getBytes(StandardCharsets.ISO_8859_1));
  }

  @Test
  @Verifies(value = "SR-08", side = Verifies.Side.ALLOWS)
  void aSoundFreshFrameIsValidEvenWhereItKeepsItsValue() throws Exception {
    assertEquals(ReadingKind.VALID, afterTwenty(Frames.steps(21 * 16)));
    assertEquals(21, track.reading().celsius());
    // The same value read again is fresh: a frozen probe is found by the heat it does not show.
    assertEquals(ReadingKind.VALID, afterTwenty(Frames.steps(20 * 16)));
    assertEquals(now, track.reading().takenNanos());
  }

  @Test
  @Verifies(value = "SR-08", side = Verifies.Side.WITHHOLDS)
  void eachBadContentIsNamedForWhatItIs() throws Exception {
    String good = Frames.steps(20 * 16);
    assertEquals(ReadingKind.ABSENT, afterTwenty(""));
    assertEquals(ReadingKind.CRC_ERROR, afterTwenty(good.replace("YES", "NO")));
    assertEquals(ReadingKind.CRC_ERROR, afterTwenty(good.replace("40 01 4b", "41 01 4b")));
    assertEquals(ReadingKind.CRC_ERROR, afterTwenty(good.replace("t=20000", "t=21000")));
    assertEquals(ReadingKind.CRC_ERROR, afterTwenty(good.substring(0, good.length() - 10)));
    assertEquals(ReadingKind.ABSENT, afterTwenty(good.substring(0, 20)));
    assertEquals(ReadingKind.POWER_ON_VALUE, afterTwenty(Frames.steps(85 * 16)));
    String zero = Frames.text("00 00 00 00 00 00 00 00 00", "YES", "0");
    assertEquals(ReadingKind.ALL_ZERO_FRAME, afterTwenty(zero));
    assertEquals(ReadingKind.OUT_OF_RANGE, afterTwenty(Frames.steps(-6 * 16)));
    assertEquals(ReadingKind.OUT_OF_RANGE, afterTwenty(Frames.steps(125 * 16)));
    assertEquals(ReadingKind.IMPOSSIBLE_RATE, afterTwenty(Frames.steps(29 * 16)));
    assertEquals(ReadingKind.IMPOSSIBLE_RATE, afterTwenty(Frames.steps(11 * 16)));
  }

  @Test
  void aGiantFileAndBinaryTrashAreAnAbsentProbe() throws Exception {
    byte[] giant = new byte[5_000_000];
    Arrays.fill(giant, (byte) 'x');
    byte[] start = Frames.steps(20 * 16).getBytes(StandardCharsets.US_ASCII);
    System.arraycopy(start, 0, giant, 0, start.length);
    assertEquals(ReadingKind.ABSENT, afterTwenty(giant));
    byte[] trash = new byte[512];
    new java.util.Random(1).nextBytes(trash);
    assertEquals(ReadingKind.ABSENT, afterTwenty(trash));
    assertEquals(ReadingKind.ABSENT, afterTwenty(new byte[75]));
  }

  @Test
  void aFolderThatVanishesAndAFileThatCannotBeReadAreAnAbsentProbe() throws Exception {
    try (OneWireProbes probes = probes()) {
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.BATH, 0).kind());
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.SECOND_BATH, 9).kind());
      judge(probes, Frames.steps(320).getBytes(StandardCharsets.US_ASCII));
      Files.delete(file(BATH));
      probes.readAll();
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.BATH, 0).kind(), "no file");
      Files.delete(root.resolve(BATH));
      probes.readAll();
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.BATH, 0).kind(), "no folder");
      Files.createDirectories(file(BATH)); // reading a folder is an input/output error
      probes.readAll();
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.BATH, 0).kind(), "a folder as file");
    }
  }

  @Test
  void aReadingNobodyRenewsGoesStaleByItself() throws Exception {
    Files.writeString(file(BATH), Frames.steps(320));
    try (OneWireProbes probes = probes()) {
      probes.readAll();
      now += 4 * SECOND;
      track = track.next(probes.latest(ProbeRole.BATH, now), now, LIMITS);
      assertEquals(ReadingKind.VALID, track.reading().kind());
      now++;
      track = track.next(probes.latest(ProbeRole.BATH, now), now, LIMITS);
      assertEquals(ReadingKind.STALE, track.reading().kind());
    }
  }

  @Test
  void aReadThatHangsForEverHoldsUpNeitherReaderNorClosing() throws Exception {
    Path hangs = file(PLATE);
    assertEquals(0, new ProcessBuilder("mkfifo", hangs.toString()).start().waitFor());
    Files.writeString(file(BATH), Frames.steps(320));
    Map<ProbeRole, String> both = Map.of(ProbeRole.BATH, BATH, ProbeRole.PLATE, PLATE);
    OneWireProbes probes = new OneWireProbes(root, both, System::nanoTime);
    probes.start();
    waitUntil(() -> probes.latest(ProbeRole.BATH, 0).kind() == Kind.FRAME);
    long taken = probes.latest(ProbeRole.BATH, 0).takenNanos();
    // From here on the thread hangs in the plate's pipe, which nobody writes to.
    assertEquals(RawReading.failed(Kind.ABSENT, 7), probes.latest(ProbeRole.PLATE, 7));
    long began = System.nanoTime();
    probes.close(); // the test's time-out is what it must not need
    assertTrue(System.nanoTime() - began >= SECOND * 9 / 10, "it did hang");
    assertEquals(taken, probes.latest(ProbeRole.BATH, 0).takenNanos());
  }

  @Test
  void theThreadReadsByItselfUntilItIsClosed() throws Exception {
    Files.writeString(file(BATH), Frames.steps(320));
    OneWireProbes probes = new OneWireProbes(root, Map.of(ProbeRole.BATH, BATH), System::nanoTime);
    probes.start();
    waitUntil(() -> probes.latest(ProbeRole.BATH, 0).kind() == Kind.FRAME);
    Files.delete(file(BATH));
    waitUntil(() -> probes.latest(ProbeRole.BATH, 0).kind() == Kind.ABSENT);
    probes.close();
  }

  private static void waitUntil(BooleanSupplier wanted) {
    long until = System.nanoTime() + 30 * SECOND;
    while (!wanted.getAsBoolean()) {
      if (System.nanoTime() > until) {
        fail("did not come");
      }
      LockSupport.parkNanos(SECOND / 100);
    }
  }

  @Test
  void allProbesOfTheBusAreReadWhereAskedAndTheOneThatLeftIsForgotten() throws Exception {
    Files.writeString(file(PLATE), Frames.steps(400));
    Files.createDirectories(root.resolve("w1_bus_master1"));
    Files.createDirectories(root.resolve("10-000000000001"));
    try (OneWireProbes probes =
        new OneWireProbes(root, Map.of(ProbeRole.BATH, BATH), OneWireProbes.Reads.ALL, () -> now)) {
      probes.readAll();
      assertEquals(List.of(PLATE, BATH), List.copyOf(probes.newest().keySet()));
      assertEquals(RawReading.frame(25, now), probes.newest().get(PLATE));
      assertEquals(RawReading.failed(Kind.ABSENT, now), probes.newest().get(BATH));
      Files.delete(file(PLATE));
      Files.delete(root.resolve(PLATE));
      probes.readAll();
      assertEquals(List.of(BATH), List.copyOf(probes.newest().keySet()));
    }
    try (OneWireProbes fitted = probes()) {
      Files.writeString(file(PLATE), Frames.steps(400));
      fitted.readAll();
      assertFalse(fitted.newest().containsKey(PLATE));
    }
  }

  @Test
  void aLostAndAFoundProbeAreOneLineEach() throws Exception {
    Logger log = (Logger) LoggerFactory.getLogger(OneWireProbes.class);
    ListAppender<ILoggingEvent> lines = new ListAppender<>();
    lines.start();
    log.addAppender(lines);
    log.setLevel(Level.INFO);
    Files.writeString(file(BATH), Frames.steps(320));
    try (OneWireProbes probes = probes()) {
      for (int s = 0; s < 30; s++, now += SECOND) {
        if (s == 10) {
          Files.delete(file(BATH));
        } else if (s == 20) {
          Files.writeString(file(BATH), Frames.steps(320));
        }
        probes.readAll();
      }
    } finally {
      log.detachAppender(lines);
      log.setLevel(null);
    }
    assertEquals(
        List.of(
            "the bath probe, " + BATH + ", does not answer",
            "the bath probe, " + BATH + ", answers again"),
        lines.list.stream().map(ILoggingEvent::getFormattedMessage).toList());
  }
}
