package trayward.controller.transmitter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.modbus.ByteLine;
import trayward.controller.modbus.Pdu;
import trayward.controller.modbus.RtuFrame;
import trayward.controller.modbus.RtuServer;
import trayward.controller.modbus.SerialLine;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.port.RawReading.Kind;

/** Transmitters over a line in memory and over a real pair of serial ports. */
@Timeout(120)
class TransmitterProbesTest {

  private static final long SECOND = 1_000_000_000L;
  private static final Channel BATH = channel(1, 0);
  private static final Channel PLATE = channel(2, 5);

  @TempDir private Path folder;

  private static Channel channel(int unit, int register) {
    return new Channel(
        unit,
        4,
        register,
        RegisterType.INT16,
        false,
        0.1,
        0,
        new Reports.Celsius(),
        OptionalDouble.of(-32_768));
  }

  /** Two transmitters on one line, as bytes: unit 1 has register 0, unit 2 register 5. */
  private static final class TwoUnits implements ByteLine {
    final Map<Integer, Integer> tenths = new HashMap<>(Map.of(1, 400, 2, 551));
    byte[] answer = {};
    boolean gone;
    boolean disturbed;

    @Override
    public int read(byte[] into, int offset) {
      int came = answer.length;
      System.arraycopy(answer, 0, into, offset, came);
      answer = new byte[0];
      return came;
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      if (gone) {
        throw new IOException("pulled out");
      }
      int unit = bytes[0];
      Integer value = tenths.get(unit);
      boolean there = bytes[1] == 4 && bytes[3] == (unit == 1 ? 0 : 5) && bytes[5] == 1;
      if (value == null) {
        return; // nobody answers
      }
      Pdu pdu =
          there
              ? new Pdu((byte) 4, (byte) 2, (byte) (value >> 8), (byte) (int) value)
              : new Pdu((byte) 0x84, (byte) 2);
      answer = RtuFrame.encode(unit, pdu);
      answer[answer.length - 1] ^= (byte) (disturbed ? 1 : 0);
    }

    @Override
    public void discard() {
      answer = new byte[0];
    }

    @Override
    public void close() {
      gone = true;
    }
  }

  private final List<TwoUnits> opened = new ArrayList<>();
  private boolean portMissing;

  private ByteLine open() throws IOException {
    if (portMissing) {
      throw new IOException("serial port X is not there");
    }
    opened.add(new TwoUnits());
    return opened.get(opened.size() - 1);
  }

  private TransmitterProbes probes() {
    return new TransmitterProbes(
        new RtuRegisterLine(this::open),
        Map.of(ProbeRole.BATH, BATH, ProbeRole.PLATE, PLATE),
        () -> 9);
  }

  private static Kind kind(TransmitterProbes probes, ProbeRole role) {
    return probes.latest(role, 0).kind();
  }

  @Test
  void twoTransmittersOnOneLineAreReadEachByItsUnit() {
    TransmitterProbes probes = probes();
    assertEquals(Kind.ABSENT, kind(probes, ProbeRole.BATH));
    probes.readAll();
    assertEquals(RawReading.transmitted(40, 9), probes.latest(ProbeRole.BATH, 50));
    assertEquals(55.1, probes.latest(ProbeRole.PLATE, 50).celsius(), 1e-9);
    assertEquals(Kind.ABSENT, kind(probes, ProbeRole.SECOND_BATH));
    assertEquals(1, opened.size(), "one line for both");
  }

  @Test
  void silenceRefusalAndDisturbanceAreNamedForWhatTheyAre() {
    TransmitterProbes probes = probes();
    probes.readAll();
    opened.get(0).tenths.remove(2);
    probes.readAll();
    assertEquals(Kind.ABSENT, kind(probes, ProbeRole.PLATE), "silent");
    assertEquals(Kind.TRANSMITTED, kind(probes, ProbeRole.BATH), "the other one goes on");
    opened.get(0).disturbed = true;
    probes.readAll();
    assertEquals(Kind.CRC_ERROR, kind(probes, ProbeRole.BATH));
    opened.get(0).disturbed = false;
    TransmitterProbes wrongRegister =
        new TransmitterProbes(
            new RtuRegisterLine(this::open), Map.of(ProbeRole.BATH, channel(1, 3)), () -> 0);
    wrongRegister.readAll();
    assertEquals(Kind.ABSENT, kind(wrongRegister, ProbeRole.BATH), "refused");
  }

  @Test
  void aLineThatIsPulledOutComesBackByItself() {
    TransmitterProbes probes = probes();
    probes.readAll();
    opened.get(0).close();
    portMissing = true;
    probes.readAll();
    probes.readAll();
    assertEquals(Kind.ABSENT, kind(probes, ProbeRole.BATH));
    assertEquals(Kind.ABSENT, kind(probes, ProbeRole.PLATE));
    portMissing = false;
    probes.readAll();
    probes.readAll();
    assertEquals(Kind.TRANSMITTED, kind(probes, ProbeRole.BATH));
    assertEquals(Kind.TRANSMITTED, kind(probes, ProbeRole.PLATE));
  }

  @Test
  void aLineThatHangsForEverHoldsUpNeitherReaderNorClosing() throws Exception {
    CountDownLatch asked = new CountDownLatch(1);
    CountDownLatch never = new CountDownLatch(1);
    RegisterLine hangs =
        new RegisterLine() {
          @Override
          public Answer read(int unit, int function, int register, int count) {
            asked.countDown();
            try {
              never.await();
            } catch (InterruptedException e) {
              Thread.currentThread().interrupt();
            }
            return new Answer.Nothing("ended");
          }

          @Override
          public void close() {}
        };
    TransmitterProbes probes =
        new TransmitterProbes(hangs, Map.of(ProbeRole.BATH, BATH), System::nanoTime);
    probes.start();
    assertTrue(asked.await(30, TimeUnit.SECONDS));
    assertEquals(Kind.ABSENT, kind(probes, ProbeRole.BATH));
    probes.close(); // the test's time-out is what it must not need
    never.countDown();
  }

  /** A pair of serial ports of the system's own, one end played by the server of this program. */
  @Test
  void overARealSerialPortAReadingComesAndGoesWithTheTransmitter() throws Exception {
    try (SerialPair pair = SerialPair.in(folder);
        TransmitterProbes probes =
            new TransmitterProbes(
                new RtuRegisterLine(() -> SerialLine.open(pair.near())),
                Map.of(ProbeRole.BATH, BATH),
                System::nanoTime)) {
      probes.start();
      try (RtuServer server = OneRegister.of(1, 0, 234).on(pair.far())) {
        server.start();
        waitUntil(() -> kind(probes, ProbeRole.BATH) == Kind.TRANSMITTED);
        assertEquals(23.4, probes.latest(ProbeRole.BATH, 0).celsius(), 1e-9);
      }
      waitUntil(() -> kind(probes, ProbeRole.BATH) == Kind.ABSENT);
    }
  }

  private static void waitUntil(BooleanSupplier wanted) {
    long until = System.nanoTime() + 60 * SECOND;
    while (!wanted.getAsBoolean()) {
      if (System.nanoTime() > until) {
        fail("did not come");
      }
      LockSupport.parkNanos(SECOND / 100);
    }
  }
}
