package trayward.host.app;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.LinkTable;
import trayward.controller.app.Settings;
import trayward.controller.app.StationServer;
import trayward.controller.modbus.ModbusClient;
import trayward.controller.modbus.RtuClient;
import trayward.controller.modbus.SerialLine;
import trayward.controller.modbus.TcpClient;
import trayward.host.cli.Work;
import trayward.host.link.RegisterLink;
import trayward.host.store.LogFile;
import trayward.host.store.LogRefused;
import trayward.host.store.TrayLog;
import trayward.host.web.guard.Door;

/** Page and log as a process of their own, the controller at the end of a line. */
final class HostRunner {

  /** Longest wait for an answer, ms: 125 registers take 150 at 19200 baud. */
  private static final int PATIENCE_MS = 400;

  private final PrintStream out;
  private final PrintStream err;

  HostRunner(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  static ConfigRefused noLine(Path config) {
    return new ConfigRefused(
        config
            + ": link: found nothing, accepted is serial_port = \"/dev/…\" or tcp_port = 1 to 65535");
  }

  int run(Path config) {
    try {
      Settings settings = Settings.read(config);
      if (!settings.link().configured()) {
        throw noLine(config);
      }
      Door door = DoorWork.of(settings, Optional.of(config), false);
      return serve(settings, door, LogFile.open(settings.logFolder(), BookSettings.of(settings)));
    } catch (LogRefused e) {
      err.println(e.getMessage());
      return LogWork.exitCode(e);
    } catch (ConfigRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    }
  }

  private int serve(Settings settings, Door door, TrayLog log) {
    RegisterLink link = new RegisterLink(client(settings.link()), System::nanoTime);
    HostHalf host;
    try {
      host = HostHalf.open(door, link, log);
    } catch (HostHalf.PortTaken e) {
      log.close();
      err.println(e.getMessage());
      return Work.FAILED;
    }
    Runnable closing = LastWords.onceAndAtExit(() -> close(host, link));
    link.start();
    host.start();
    out.println(DoorWork.greeting(door, host.port()));
    out.println("Its controller is asked on " + settings.link().words());
    out.println("Prints are kept in " + settings.logFolder().toAbsolutePath());
    DoorWork.caution(settings, door).ifPresent(out::println);
    out.println("Ctrl-C ends it. The controller goes on: stop heat there or here first.");
    out.flush();
    return new LastWords().await(closing);
  }

  private static ModbusClient client(LinkTable link) {
    return link.serial()
        .<ModbusClient>map(
            serial -> new RtuClient(() -> SerialLine.open(serial), StationServer.UNIT, PATIENCE_MS))
        .orElseGet(
            () -> new TcpClient(link.tcpPort().orElseThrow(), StationServer.UNIT, PATIENCE_MS));
  }

  private void close(HostHalf host, RegisterLink link) {
    host.close();
    link.close();
    out.println();
    out.println("The log is closed. The controller goes on by itself.");
    out.flush();
  }
}
