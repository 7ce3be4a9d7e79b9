package trayward.controller.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import trayward.controller.modbus.ModbusClient;
import trayward.controller.modbus.TcpClient;
import trayward.controller.scan.Snapshot;

/** A running controller on a simulated tray, its registers on loopback TCP. */
final class StationBench implements AutoCloseable {

  /** 2026-11-25T12:00:00Z. */
  private static final long NOON_S = (20_782L * 24 + 12) * 3600;

  final ControllerRuntime controller;
  final StationServer server;
  final ModbusClient client;

  /** A bench whose configuration has these lines besides; {@code link} is its line. */
  StationBench(Path folder, int port, String link, String more) throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("tray.toml"),
            "[link]\n%s\n[log]\nfolder = \"%s/data\"\n%s".formatted(link, folder, more));
    Settings settings = Settings.read(file);
    controller = new ControllerRuntime(settings, System::nanoTime, () -> NOON_S, e -> {});
    server = new StationServer(controller, settings);
    controller.start();
    server.start();
    client = new TcpClient(port, 1, 5000);
  }

  static StationBench tcp(Path folder) throws Exception {
    int port = freePort();
    return new StationBench(folder, port, "tcp_port = " + port, "");
  }

  static int freePort() throws Exception {
    try (var socket = new java.net.ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  /** The newest snapshot; there is one as soon as the controller has started. */
  Snapshot now() {
    return Objects.requireNonNull(controller.latest());
  }

  @Override
  public void close() {
    client.close();
    server.close();
    controller.close();
  }
}
