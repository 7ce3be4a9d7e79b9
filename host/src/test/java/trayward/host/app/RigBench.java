package trayward.host.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Folders, settings and the outside process of a bench rig in one temporary folder. The times
 * before heat are the shortest that the limits allow.
 */
final class RigBench {

  private final Path folder;

  RigBench(Path folder) {
    this.folder = folder;
  }

  /** Writes the settings of a small, fast-heating tray that is to be held at {@code setC}. */
  Path config(double setC) throws IOException {
    Files.createDirectories(lines());
    Files.createDirectories(probes());
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
        spin_up_s = 1
        spin_down_s = 0.5
        [control]
        set_c = %2$s
        [limits]
        purge_s = 10
        contact_test_s = 15
        proving_s = 2
        look_extra_s = 1
        [server]
        port = 0
        [log]
        folder = "%1$s/data"
        """
            .formatted(folder, setC));
  }

  /** Starts the tray as a process of its own. */
  Process rig() throws IOException {
    return rig(List.of(this));
  }

  /** Starts the trays of many benches in one process. */
  static Process rig(List<RigBench> benches) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-cp"));
    command.add(System.getProperty("java.class.path"));
    command.add(OutsideRig.class.getName());
    for (RigBench bench : benches) {
      command.add(bench.lines().toString());
      command.add(bench.probes().toString());
    }
    return new ProcessBuilder(command).inheritIO().start();
  }

  /** The folder of line files. */
  Path lines() {
    return folder.resolve("lines");
  }

  /** The folder of probe folders. */
  Path probes() {
    return folder.resolve("w1");
  }

  /** The folder of log and record. */
  Path data() {
    return folder.resolve("data");
  }

  /** What a line's file says. */
  String line(String name) throws IOException {
    return Files.readString(lines().resolve(name)).trim();
  }

  /** The rig's bath gets a sheet or a pour of this heat capacity and temperature. */
  void give(double jPerK, double celsius) throws IOException {
    Path beside = Files.writeString(lines().resolve("rig_is_given.test"), jPerK + " " + celsius);
    Files.move(beside, lines().resolve("rig_is_given"), StandardCopyOption.ATOMIC_MOVE);
  }

  /** From now on the rig leaves these lines and probes alone: returns when it has seen so. */
  void rigLeaves(String names) throws IOException {
    Path beside = Files.writeString(lines().resolve("rig_leaves.test"), names);
    Files.move(beside, lines().resolve("rig_leaves"), StandardCopyOption.ATOMIC_MOVE);
    for (int ticks = 0; ticks < 2; ticks++) { // the second began after the names were there
      String tick = line("tick");
      long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(10);
      while (line("tick").equals(tick)) {
        if (System.nanoTime() > until) {
          throw new IOException("the rig stands still");
        }
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
      }
    }
  }
}
