package trayward.host.deb;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * This computer's own system, booted once more in a container: what it writes stays in memory and
 * is gone at the end, and its network is its own loopback. It takes root and systemd-nspawn. One
 * thread.
 */
final class BootedSystem {

  /** What the second system may write, MB: the package and its archives of classes take 150. */
  private static final int WRITTEN_MB = 700;

  /** A boot of a container takes seconds; a loaded computer a multiple of them. */
  private static final long BOOT_NANOS = TimeUnit.SECONDS.toNanos(90);

  private final Path memory;
  private final Path root;
  private final Process container;
  private long leader;

  private BootedSystem(Path memory, Process container) {
    this.memory = memory;
    this.root = memory.resolve("root");
    this.container = container;
  }

  /** Whether this computer can. */
  static boolean possible() {
    return System.getProperty("user.name").equals("root")
        && TestRoot.has("systemd-nspawn")
        && TestRoot.has("nsenter");
  }

  /** Boots, with a file of this computer's as {@code /root/} and its name in it. */
  static BootedSystem boot(Path memory, Path file) throws Exception {
    TestRoot.run(
        List.of("mount", "-t", "tmpfs", "-o", "size=" + WRITTEN_MB + "m", "tmpfs", "" + memory));
    Path root = Files.createDirectory(memory.resolve("root"));
    Path up = Files.createDirectory(memory.resolve("up"));
    Path work = Files.createDirectory(memory.resolve("work"));
    String layers = "lowerdir=/,upperdir=" + up + ",workdir=" + work;
    TestRoot.run(List.of("mount", "-t", "overlay", "overlay", "-o", layers, root.toString()));
    Files.copy(
        file,
        root.resolve("root").resolve(file.getFileName().toString()),
        StandardCopyOption.REPLACE_EXISTING);
    Files.deleteIfExists(root.resolve("etc/machine-id")); // it makes one of its own
    Process container =
        new ProcessBuilder(
                "systemd-nspawn",
                "--directory=" + root,
                "--boot",
                "--register=no",
                "--keep-unit",
                "--private-network",
                "--console=pipe",
                "--capability=CAP_SYS_NICE") // as a real system has it
            .redirectErrorStream(true)
            .redirectOutput(memory.resolve("console").toFile())
            .start();
    BootedSystem system = new BootedSystem(memory, container);
    try {
      system.awaitBoot();
    } catch (Exception e) {
      system.powerOff();
      throw e;
    }
    return system;
  }

  private void awaitBoot() throws Exception {
    long untilNanos = System.nanoTime() + BOOT_NANOS;
    while (!booted()) {
      if (System.nanoTime() > untilNanos || !container.isAlive()) {
        throw new IOException("it does not boot: " + Files.readString(memory.resolve("console")));
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
    }
  }

  private boolean booted() throws Exception {
    leader = container.children().map(ProcessHandle::pid).findFirst().orElse(0L);
    if (leader == 0) {
      return false;
    }
    String state = said("systemctl", "is-system-running").strip();
    return state.equals("running") || state.equals("degraded");
  }

  private List<String> inside(String... words) {
    List<String> command =
        new ArrayList<>(
            List.of("nsenter", "-t", Long.toString(leader), "-m", "-p", "-n", "-i", "-u"));
    command.addAll(List.of(words));
    return command;
  }

  /** What a command in there said, whatever its exit code. */
  String said(String... words) throws Exception {
    Process process = new ProcessBuilder(inside(words)).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return said;
  }

  /** What a command in there said; an exit code other than 0 is a failure that says it. */
  String run(String... words) throws Exception {
    return TestRoot.run(inside(words));
  }

  /** A property of a unit. */
  String property(String unit, String name) throws Exception {
    return run("systemctl", "show", "--value", "--property=" + name, unit).strip();
  }

  /** A file in there. */
  Path at(String path) {
    return root.resolve(path.substring(1));
  }

  /** Powers it off; what it wrote is gone. */
  void powerOff() throws Exception {
    if (leader != 0 && container.isAlive()) {
      said("systemctl", "poweroff");
    }
    if (!container.waitFor(60, TimeUnit.SECONDS)) {
      container.destroyForcibly().waitFor();
    }
    TestRoot.run(List.of("umount", "-l", root.toString()));
    TestRoot.run(List.of("umount", "-l", memory.toString()));
  }
}
