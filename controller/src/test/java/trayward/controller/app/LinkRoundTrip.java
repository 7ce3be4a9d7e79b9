package trayward.controller.app;

import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.HdrHistogram.Histogram;
import trayward.controller.modbus.ModbusClient;
import trayward.controller.modbus.ModbusClient.Reply;
import trayward.controller.modbus.RtuClient;
import trayward.controller.modbus.SerialLine;
import trayward.controller.modbus.SerialSettings;
import trayward.controller.modbus.TcpClient;

/**
 * How long a host waits for a status: reads of 72 registers of a running controller, over loopback
 * TCP and over a pair of pseudo-terminals, which have no speed of their own. What a real line adds
 * is the time of its bits: 13 and 149 bytes of 11 bits, 15 ms at 115200 baud, 93 at 19200.
 */
final class LinkRoundTrip {

  private static final int READS = 500;

  private LinkRoundTrip() {}

  public static void main(String[] args) throws Exception {
    PrintStream out = System.out;
    Path folder = Files.createTempDirectory("round-trip");
    int port = StationBench.freePort();
    try (StationBench bench = new StationBench(folder, port, "tcp_port = " + port, "")) {
      bench.now();
      out.println(measured("loopback TCP", new TcpClient(port, 1, 2000)));
    }
    Path tray = folder.resolve("tray");
    Path desk = folder.resolve("desk");
    Process socat =
        new ProcessBuilder("socat", "pty,raw,echo=0,link=" + tray, "pty,raw,echo=0,link=" + desk)
            .inheritIO()
            .start();
    while (!Files.exists(tray) || !Files.exists(desk)) {
      Thread.onSpinWait();
    }
    SerialSettings settings =
        new SerialSettings(desk.toString(), 115_200, SerialSettings.Parity.NONE, 2);
    try (StationBench bench = new StationBench(folder, 1, "serial_port = \"" + tray + "\"", "")) {
      bench.now();
      out.println(
          measured("pseudo-terminal", new RtuClient(() -> SerialLine.open(settings), 1, 2000)));
    } finally {
      socat.destroy();
    }
    System.exit(0);
  }

  private static String measured(String line, ModbusClient client) {
    while (!(client.readInputRegisters(0, 72) instanceof Reply.Answer)) {
      Thread.onSpinWait();
    }
    Histogram micros = new Histogram(60_000_000L, 3);
    int unanswered = 0;
    for (int i = 0; i < READS; i++) {
      long from = System.nanoTime();
      if (client.readInputRegisters(0, 72) instanceof Reply.Answer) {
        micros.recordValue((System.nanoTime() - from) / 1000);
      } else {
        unanswered++;
      }
    }
    client.close();
    return String.format(
        Locale.ROOT,
        "%s: %d reads of 72 registers, p50 %.2f ms, p99 %.2f ms, max %.2f ms, unanswered %d",
        line,
        READS,
        micros.getValueAtPercentile(50) / 1000.0,
        micros.getValueAtPercentile(99) / 1000.0,
        micros.getMaxValue() / 1000.0,
        unanswered);
  }
}
