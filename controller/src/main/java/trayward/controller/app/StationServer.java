package trayward.controller.app;

import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import trayward.controller.modbus.DeviceIdentity;
import trayward.controller.modbus.Responder;
import trayward.controller.modbus.RtuServer;
import trayward.controller.modbus.SerialLine;
import trayward.controller.modbus.TcpServer;
import trayward.controller.station.Station;

/** The controller's registers on the configured line. Made, started and closed by one thread. */
public final class StationServer implements AutoCloseable {

  /** The unit the controller answers for. */
  public static final int UNIT = 1;

  private final StationWork tray;
  private final @Nullable RtuServer rtu;
  private final @Nullable TcpServer tcp;

  /**
   * Takes the line; {@link #start} serves it. A serial port that is not there yet is waited for.
   *
   * @param controller what is served
   * @param settings the checked configuration, with a line in it
   * @throws ConfigRefused where no line is configured, or the TCP port is taken
   */
  public StationServer(ControllerRuntime controller, Settings settings) throws ConfigRefused {
    this.tray =
        new StationWork(
            controller, settings.io() instanceof Settings.Io.Sim, settings.server().hostAtTray());
    Responder responder = new Responder(new Station(tray), identity());
    LinkTable link = settings.link();
    try {
      this.rtu =
          link.serial()
              .map(serial -> new RtuServer(() -> SerialLine.open(serial), UNIT, responder))
              .orElse(null);
      this.tcp =
          link.tcpPort().isPresent() ? new TcpServer(link.tcpPort().getAsInt(), responder) : null;
    } catch (IOException e) {
      tray.close();
      throw new ConfigRefused(
          "link.tcp_port: found "
              + link.tcpPort().orElse(0)
              + ", which is taken; accepted is a port that no other program has");
    }
  }

  private static DeviceIdentity identity() {
    String version = StationServer.class.getPackage().getImplementationVersion();
    return new DeviceIdentity(
        List.of("trayward", "tray controller", version == null ? "unknown" : version));
  }

  /** Starts serving. */
  public void start() {
    if (rtu != null) {
      rtu.start();
    }
    if (tcp != null) {
      tcp.start();
    }
  }

  @Override
  public void close() {
    if (rtu != null) {
      rtu.close();
    }
    if (tcp != null) {
      tcp.close();
    }
    tray.close();
  }
}
