package trayward.host.app;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Controller and host as their packaged services start them: the jar, the options of their Java
 * machines, archives of classes, environment and scheduling of their units; at a bench rig. One
 * thread.
 */
final class PackagedHalves implements AutoCloseable {

  private static final Path JAR = Path.of("target", "trayward.jar").toAbsolutePath();
  private static final Path DEB = Path.of("src", "deb").toAbsolutePath();

  /** The word before the settings of a unit's environment. */
  private static final String ENVIRONMENT = "Environment=";

  private final Path folder;
  private final RigBench bench;
  private final Process rig;
  private final Process controller;
  private final RunningTrayward host;

  /** Whether {@code mvn package} has been run. */
  static boolean packaged() {
    return Files.exists(JAR);
  }

  /** Starts the rig and both halves and waits for the page. */
  PackagedHalves(Path folder, double setC) throws Exception {
    this.folder = folder;
    this.bench = new RigBench(folder);
    share();
    int link = freePort();
    String settings = Files.readString(bench.config(setC));
    Path tray =
        Files.writeString(
            folder.resolve("controller.toml"),
            settings.replace("port = 0", "host_at_tray = true").replace("/data\"", "/tray-data\"")
                + "[link]\ntcp_port = "
                + link
                + "\n");
    Path desk =
        Files.writeString(
            folder.resolve("host.toml"),
            """
            [link]
            tcp_port = %d
            [server]
            port = 0
            host_at_tray = true
            [log]
            folder = "%s/data"
            """
                .formatted(link, folder));
    this.rig = bench.rig();
    this.controller =
        half("controller", tray).redirectOutput(folder.resolve("controller.log").toFile()).start();
    try {
      awaitController();
      this.host = RunningTrayward.listen(half("host", desk).start());
    } catch (IOException e) {
      controller.destroyForcibly();
      rig.destroyForcibly();
      throw e;
    }
  }

  /** The jar and what stands beside it in the package, and the archives made of them. */
  private void share() throws Exception {
    Path share = Files.createDirectories(folder.resolve("share"));
    Files.copy(JAR, share.resolve("trayward.jar"));
    for (String file : List.of("controller.options", "host.options", "make-archives")) {
      Files.copy(DEB.resolve("share").resolve(file), share.resolve(file));
    }
    ProcessBuilder make =
        new ProcessBuilder(
            "sh",
            share.resolve("make-archives").toString(),
            share.resolve("trayward.jar").toString(),
            folder.resolve("cache").toString());
    int code =
        make.redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start()
            .waitFor();
    for (String half : List.of("controller", "host")) {
      if (code != 0 || Files.notExists(folder.resolve("cache").resolve(half + ".jsa"))) {
        throw new IOException("no archive of classes for the " + half);
      }
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }

  private ProcessBuilder half(String which, Path config) throws IOException {
    List<String> command = new ArrayList<>(scheduling(which));
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("@" + folder.resolve("share").resolve(which + ".options"));
    command.add("-XX:SharedArchiveFile=" + folder.resolve("cache").resolve(which + ".jsa"));
    command.addAll(List.of("-jar", folder.resolve("share").resolve("trayward.jar").toString()));
    command.addAll(List.of(which, "--config", config.toString()));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    for (String line :
        Files.readAllLines(DEB.resolve("units").resolve("trayward-" + which + ".service"))) {
      if (line.startsWith(ENVIRONMENT)) {
        for (String setting : line.substring(ENVIRONMENT.length()).split(" ", -1)) {
          int at = setting.indexOf('=');
          builder.environment().put(setting.substring(0, at), setting.substring(at + 1));
        }
      }
    }
    return builder;
  }

  /** Real-time scheduling of the controller and the host behind others, where it is allowed. */
  private static List<String> scheduling(String which) {
    List<String> words =
        which.equals("controller") ? List.of("chrt", "-f", "20") : List.of("nice", "-n", "5");
    List<String> trial = new ArrayList<>(words);
    trial.add("true");
    try {
      return new ProcessBuilder(trial).start().waitFor() == 0 ? words : List.of();
    } catch (IOException e) {
      return List.of(); // no such program here
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return List.of();
    }
  }

  private void awaitController() throws IOException {
    Path log = folder.resolve("controller.log");
    while (!Files.readString(log).contains("The controller answers")) { // the test's time-out
      if (!controller.isAlive()) {
        throw new IOException("the controller said: " + Files.readString(log));
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50));
    }
  }

  RigBench bench() {
    return bench;
  }

  RunningTrayward host() {
    return host;
  }

  long controllerPid() {
    return controller.pid();
  }

  /** A command of the jar beside the running program; what it said where it failed. */
  String command(String... words) throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-jar", folder.resolve("share").resolve("trayward.jar").toString()));
    command.addAll(List.of(words));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return process.waitFor() == 0 ? "" : Map.of(String.join(" ", words), said).toString();
  }

  /** Ends both as systemd does. */
  void endPolitely() throws Exception {
    host.endPolitely();
    controller.destroy();
    controller.waitFor();
  }

  @Override
  public void close() {
    host.close();
    controller.destroyForcibly();
    rig.destroyForcibly();
  }
}
