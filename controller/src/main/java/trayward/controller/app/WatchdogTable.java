package trayward.controller.app;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trayward.controller.port.OutsideWatchdog;
import trayward.controller.watchdog.SystemdNotify;
import trayward.controller.watchdog.WatchdogDevice;

/**
 * The {@code [watchdog]} table: who outside of the program is told of complete scans (SR-18).
 *
 * @param device the kernel's watchdog; empty for none
 * @param systemd whether systemd is told where it started the program
 */
public record WatchdogTable(Optional<Path> device, boolean systemd) {

  static WatchdogTable read(Section table) throws ConfigRefused {
    Optional<Path> device = table.has("device") ? Optional.of(device(table)) : Optional.empty();
    boolean systemd = table.oneOf("systemd", "auto", List.of("auto", "off")).equals("auto");
    table.done();
    return new WatchdogTable(device, systemd);
  }

  private static Path device(Section table) throws ConfigRefused {
    String text = table.text("device");
    try {
      if (!text.isEmpty()) {
        return Path.of(text);
      }
    } catch (InvalidPathException e) {
      throw table.refuse("device", "'" + text + "'", "the path of a watchdog device");
    }
    throw table.refuse("device", "''", "the path of a watchdog device");
  }

  /**
   * Arms them. The device comes last: from then on the computer restarts where no scan comes.
   *
   * @param environment as it was handed to the program
   */
  List<OutsideWatchdog> open(Map<String, String> environment) throws ConfigRefused {
    List<OutsideWatchdog> all = new ArrayList<>();
    if (systemd) {
      try {
        SystemdNotify.of(environment, ProcessHandle.current().pid()).ifPresent(all::add);
      } catch (IOException e) {
        throw new ConfigRefused("watchdog.systemd: " + e.getMessage());
      }
    }
    if (device.isPresent()) {
      try {
        all.add(WatchdogDevice.open(device.get()));
      } catch (IOException e) {
        throw new ConfigRefused(
            "watchdog.device: found '"
                + device.get()
                + "', accepted is a watchdog device that can be opened for writing: "
                + e.getMessage());
      }
    }
    return all;
  }
}
