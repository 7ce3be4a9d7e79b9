package trayward.host.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Folders, settings and the outside process of a bench rig in one temporary folder. */
final class RigBench {

  private final Path folder;

  RigBench(Path folder) {
    this.folder = folder;
  }

  /** Writes the settings of a small, fast-heating tray. */
  Path config() throws IOException {
    Files.createDirectories(folder.resolve("lines"));
    Files.createDirectories(folder.resolve("w1"));
    return Files.writeString(
        folder.resolve("rig.toml"),
        """
        [io]
        kind = "files"
        folder = "%1$s/lines"
        onewire_root = "%1$s/w1"
        [probes]
        bath = "28-0000000000b1"
        plate = "28-0000000000c2"
        [tray]
        liquid_l = 0.12
        heater_w = 200
        plate_j_per_k = 120
        area_m2 = 0.001
        [fan]
        spin_up_s = 2
        spin_down_s = 2
        [control]
        set_c = 30
        [limits]
        purge_s = 10
        [server]
        port = 0
        [log]
        folder = "%1$s/data"
        """
            .formatted(folder));
  }

  /** Starts the tray as a process of its own. */
  Process rig() throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            OutsideRig.class.getName(),
            folder.resolve("lines").toString(),
            folder.resolve("w1").toString())
        .inheritIO()
        .start();
  }

  /** What a line's file says. */
  String line(String name) throws IOException {
    return Files.readString(folder.resolve("lines").resolve(name)).trim();
  }
}
