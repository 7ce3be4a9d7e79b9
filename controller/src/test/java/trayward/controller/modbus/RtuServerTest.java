package trayward.controller.modbus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class RtuServerTest {

  private static final byte[] GOOD = hex("01 04 00 08 00 01 B0 08");
  private static final byte[] ANSWER = hex("01 04 02 00 0A 39 37");

  private final ExampleRegisters registers = ExampleRegisters.ofTheStandard();
  private final LinkedBlockingQueue<ScriptedLine> lines = new LinkedBlockingQueue<>();
  private final ScriptedLine line = new ScriptedLine();
  private final RtuServer server =
      new RtuServer(
          this::nextLine,
          1,
          new Responder(registers, new DeviceIdentity(List.of("vendor", "code", "1.0"))));

  private ByteLine nextLine() throws IOException {
    ScriptedLine next = lines.poll();
    if (next == null) {
      throw new IOException("no line yet");
    }
    return next;
  }

  private static byte[] hex(String text) {
    return HexFormat.ofDelimiter(" ").parseHex(text);
  }

  @BeforeEach
  void start() {
    lines.add(line);
    server.start();
  }

  @AfterEach
  void close() {
    line.close();
    server.close();
  }

  /** Whether the server lives and answers; what it was sent before is then dealt with. */
  private void answers(ScriptedLine over) throws InterruptedException {
    over.hear(GOOD);
    byte[] answer = over.sent.poll(10, TimeUnit.SECONDS);
    assertNotNull(answer, "the server is silent");
    assertArrayEquals(ANSWER, answer);
  }

  @Test
  void aFrameInPiecesIsOneFrame() throws InterruptedException {
    line.hear(Arrays.copyOf(GOOD, 3), Arrays.copyOfRange(GOOD, 3, 8));
    assertArrayEquals(ANSWER, line.sent.poll(10, TimeUnit.SECONDS));
  }

  @Test
  void aBadCheckSumGetsNoAnswerAndChangesNothing() throws InterruptedException {
    String before = registers.written();
    line.hear(hex("01 06 00 01 00 03 98 0A"));
    line.hear(hex("01 10 00 01 00 02 04 00 0A 01 02 92 31"));
    answers(line);
    assertTrue(line.sent.isEmpty());
    assertEquals(before, registers.written());
  }

  @Test
  void anotherUnitsFrameAndABroadcastGetNoAnswerAndChangeNothing() throws InterruptedException {
    String before = registers.written();
    line.hear(RtuFrame.encode(2, new Pdu(hex("06 00 01 00 03"))));
    line.hear(RtuFrame.encode(0, new Pdu(hex("06 00 01 00 03"))));
    answers(line);
    assertTrue(line.sent.isEmpty());
    assertEquals(before, registers.written());
  }

  @Test
  void tenThousandMalformedFramesLeaveTheServerAliveAndUnchanged() throws InterruptedException {
    String before = registers.written();
    Random random = new Random(20_261);
    for (int i = 0; i < 10_000; i++) {
      line.hear(malformed(random));
      if (i % 500 == 499) {
        answers(line);
      }
    }
    answers(line);
    assertTrue(line.sent.isEmpty());
    assertEquals(before, registers.written());
  }

  /** A write that would count, damaged; or noise of any length. Never a frame by chance. */
  private static byte[] malformed(Random random) {
    byte[] write = hex("01 10 00 01 00 02 04 00 0A 01 02 92 30");
    byte[] frame =
        switch (random.nextInt(5)) {
          case 0 -> flipped(write, random);
          case 1 -> Arrays.copyOf(write, 1 + random.nextInt(write.length - 1));
          case 2 -> Arrays.copyOf(write, write.length + 1 + random.nextInt(240));
          case 3 -> joined(write, write);
          default -> noise(random, 1 + random.nextInt(RtuFrame.MAX_BYTES));
        };
    boolean whole =
        RtuFrame.parse(frame, frame.length) instanceof RtuFrame.Parsed.Whole w && w.unit() == 1;
    return whole ? flipped(frame, random) : frame;
  }

  private static byte[] flipped(byte[] frame, Random random) {
    byte[] damaged = frame.clone();
    damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
    return damaged;
  }

  private static byte[] joined(byte[] first, byte[] second) {
    byte[] both = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, both, first.length, second.length);
    return both;
  }

  private static byte[] noise(Random random, int length) {
    byte[] bytes = new byte[length];
    random.nextBytes(bytes);
    return bytes;
  }

  @Test
  void aRunOfBytesLongerThanAnyFrameIsWaitedOut() throws InterruptedException {
    line.hear(noise(new Random(1), 200), noise(new Random(2), 57), new byte[256], GOOD);
    answers(line);
    assertTrue(line.sent.isEmpty());
  }

  @Test
  void aLineThatGoesIsOpenedAgain() throws InterruptedException {
    answers(line);
    ScriptedLine second = new ScriptedLine();
    lines.add(second);
    line.gone = true;
    line.hear(GOOD);
    answers(second);
    assertTrue(line.closed);
  }
}
