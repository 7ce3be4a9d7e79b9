package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A client that is not ours, mbpoll (a Debian package), asks the running controller over a pair of
 * pseudo-terminals made by socat, and over loopback TCP. Both are installed by {@code .ci/install
 * --tests}.
 */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class RealClientTest {

  @TempDir private Path folder;

  /** What a program said, and how it ended. */
  private record Said(int code, String text) {}

  private static Said run(String... command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(30, TimeUnit.SECONDS));
    return new Said(process.exitValue(), text);
  }

  /** A pair of pseudo-terminals; both ends are there when this returns. */
  private Process cable() throws Exception {
    Process socat =
        new ProcessBuilder(
                "socat",
                "pty,raw,echo=0,link=" + folder.resolve("tray"),
                "pty,raw,echo=0,link=" + folder.resolve("desk"))
            .inheritIO()
            .start();
    while (!Files.exists(folder.resolve("tray")) || !Files.exists(folder.resolve("desk"))) {
      assertTrue(socat.isAlive(), "socat has ended");
      Thread.onSpinWait();
    }
    return socat;
  }

  private StationBench onSerial() throws Exception {
    StationBench bench =
        new StationBench(folder, 1, "serial_port = \"" + folder.resolve("tray") + "\"", "");
    while (poll("-t", "0", "-r", "0", "-c", "1").code() != 0) {
      Thread.onSpinWait(); // the controller opens its line on a thread of its own
    }
    return bench;
  }

  private Said poll(String... words) throws Exception {
    return poll(List.of("-m", "rtu", "-b", "115200", "-P", "none", "-a", "1"), "desk", words);
  }

  private Said poll(List<String> line, String where, String... words) throws Exception {
    List<String> command = new ArrayList<>(List.of("mbpoll"));
    command.addAll(line);
    command.addAll(List.of("-1", "-0", "-o", "2"));
    int values = Arrays.asList(words).indexOf("--");
    List<String> options = values < 0 ? List.of(words) : List.of(words).subList(0, values);
    command.addAll(options);
    command.add(where.equals("desk") ? folder.resolve("desk").toString() : where);
    if (values >= 0) {
      command.addAll(List.of(words).subList(values + 1, words.length));
    }
    return run(command.toArray(String[]::new));
  }

  private static void assertReads(Said said, String line) {
    assertTrue(said.text().contains(line), said.text());
  }

  @Test
  void everyBlockIsReadOverASerialLineAndASetTemperatureIsWritten() throws Exception {
    Process cable = cable();
    try (StationBench bench = onSerial()) {
      Said status = poll("-t", "3", "-r", "0", "-c", "72");
      assertReads(status, "[0]: \t1");
      assertReads(status, "[6]: \t4000");
      assertEquals(0, poll("-t", "3", "-r", "100", "-c", "121").code());
      assertEquals(0, poll("-t", "3", "-r", "250", "-c", "34").code());
      for (int base : new int[] {300, 400, 500}) {
        assertEquals(0, poll("-t", "3", "-r", "" + base, "-c", "92").code());
      }
      assertEquals(0, poll("-t", "3", "-r", "700", "-c", "122").code());
      assertEquals(0, poll("-t", "3", "-r", "1000", "-c", "120").code());
      assertEquals(0, poll("-t", "1", "-r", "0", "-c", "13").code());
      assertEquals(0, poll("-t", "0", "-r", "0", "-c", "3").code());
      assertReads(poll("-t", "4", "-r", "0", "--", "1", "6", "3725"), "Written 3 references");
      awaitSet(bench, 37.25);
      assertReads(poll("-t", "3", "-r", "6", "-c", "1"), "[6]: \t3725");
    } finally {
      end(cable);
    }
  }

  @Test
  void theStandardsExceptionsReachARealClient() throws Exception {
    Process cable = cable();
    try (StationBench bench = onSerial()) {
      Said beyond = poll("-t", "3", "-r", "2000", "-c", "1");
      assertTrue(beyond.code() != 0);
      assertReads(beyond, "Illegal data address");
      assertReads(poll("-t", "4", "-r", "0", "--", "1", "6"), "Illegal data value");
      assertEquals("OFF", bench.now().state().name());
    } finally {
      end(cable);
    }
  }

  @Test
  void overLoopbackTcpTheSameClientReadsAndWrites() throws Exception {
    int port = StationBench.freePort();
    try (StationBench bench = new StationBench(folder, port, "tcp_port = " + port, "")) {
      List<String> line = List.of("-m", "tcp", "-p", "" + port, "-a", "1");
      assertReads(poll(line, "127.0.0.1", "-t", "3", "-r", "0", "-c", "72"), "[6]: \t4000");
      assertReads(
          poll(line, "127.0.0.1", "-t", "4", "-r", "0", "--", "1", "6", "2950"),
          "Written 3 references");
      awaitSet(bench, 29.5);
      assertReads(
          poll(line, "127.0.0.1", "-t", "3", "-r", "2000", "-c", "1"), "Illegal data address");
    }
  }

  /** Waits until the scan has taken it; the test's time-out bounds it. */
  private static void awaitSet(StationBench bench, double celsius) {
    while (bench.now().setC() != celsius) {
      Thread.onSpinWait();
    }
  }

  /**
   * Bytes as they come on a real line: a bad check sum and ten thousand malformed frames, in runs
   * without silences between them, change nothing and get no answer; the next good frame does.
   */
  @Test
  void badCheckSumsAndNoiseAreAnsweredBySilenceAndChangeNothing() throws Exception {
    Process cable = cable();
    try (StationBench bench = onSerial()) {
      SerialPort desk = SerialPort.getCommPort(folder.resolve("desk").toString());
      desk.setComPortParameters(115_200, 8, SerialPort.TWO_STOP_BITS, SerialPort.NO_PARITY);
      desk.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 5000, 0);
      assertTrue(desk.openPort(0));
      assertArrayEquals(hex("01 01 01 00 51 88"), ask(desk, hex("01 01 00 00 00 01 FD CA")));
      send(desk, hex("01 10 00 00 00 03 06 00 09 00 02 00 00 00 00")); // a start, no check sum
      Random random = new Random(5);
      for (int i = 0; i < 10_000; i++) {
        byte[] noise = new byte[1 + random.nextInt(16)];
        random.nextBytes(noise);
        noise[0] = 1;
        send(desk, noise);
      }
      assertArrayEquals(hex("01 01 01 00 51 88"), afterTheNoise(desk));
      assertEquals("OFF", bench.now().state().name());
      assertEquals(40, bench.now().setC());
      desk.closePort();
    } finally {
      end(cable);
    }
  }

  private static byte[] hex(String text) {
    return HexFormat.ofDelimiter(" ").parseHex(text);
  }

  private static void send(SerialPort port, byte[] bytes) throws IOException {
    if (port.writeBytes(bytes, bytes.length) != bytes.length) {
      throw new IOException("the pseudo-terminal takes nothing");
    }
  }

  private static byte[] ask(SerialPort port, byte[] request) throws IOException {
    send(port, request);
    byte[] answer = new byte[6];
    int length = 0;
    while (length < answer.length) {
      byte[] piece = new byte[answer.length - length];
      int came = port.readBytes(piece, piece.length);
      if (came <= 0) {
        return Arrays.copyOf(answer, length);
      }
      System.arraycopy(piece, 0, answer, length, came);
      length += came;
    }
    return answer;
  }

  /** The noise may still be on its way; a good frame between silences is answered then. */
  private static byte[] afterTheNoise(SerialPort port) throws IOException {
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 200, 0);
    for (int i = 0; i < 100; i++) {
      byte[] answer = ask(port, hex("01 01 00 00 00 01 FD CA"));
      if (answer.length > 0) {
        return answer;
      }
    }
    return new byte[0];
  }

  private static void end(Process process) throws InterruptedException {
    process.destroy();
    process.waitFor();
  }
}
