package trayward.controller.gpio;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * An emulated computer with a chip of lines: prepared once from Debian's packages, booted once for
 * all tests, gone when it has written its facts.
 *
 * @param facts what the guest wrote down
 * @param out where it left what its programs said
 */
record EmulatedChip(Map<String, String> facts, Path out) {

  private static final Path SCRIPTS = Path.of("src", "test", "emulated");
  private static final Path TARGET = Path.of("target", "emulated");
  private static final Path PROGRAM = Path.of("..", "host", "target", "trayward.jar");

  /** Some 330 MB to fetch, over a slow line. */
  private static final long PREPARE_MINUTES = 60;

  /** Ten times what it takes on two busy processors. */
  private static final long RUN_MINUTES = 30;

  /** Whether this computer has the emulator. */
  static boolean available() {
    return Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator, -1))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, "qemu-system-aarch64")));
  }

  static EmulatedChip run() throws IOException, InterruptedException {
    Path machine = prepare();
    Path share = fresh(TARGET.resolve("share"));
    Path out = fresh(TARGET.resolve("out"));
    Files.copy(SCRIPTS.resolve("guest"), share.resolve("guest"));
    Files.writeString(share.resolve("classpath"), classpath(share));
    if (Files.exists(PROGRAM)) {
      Files.copy(PROGRAM, share.resolve("trayward.jar"));
    }
    Path console = TARGET.resolve("console.log").toAbsolutePath();
    Process guest =
        new ProcessBuilder(command(machine, share, out))
            .redirectErrorStream(true)
            .redirectOutput(console.toFile())
            .start();
    ended(guest, RUN_MINUTES, console);
    return new EmulatedChip(facts(out), out);
  }

  private static Path prepare() throws IOException, InterruptedException {
    Files.createDirectories(TARGET);
    Path said = TARGET.resolve("prepare.log").toAbsolutePath();
    Process prepare =
        new ProcessBuilder("sh", SCRIPTS.resolve("prepare").toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .redirectOutput(said.toFile())
            .start();
    ended(prepare, PREPARE_MINUTES, said);
    return Path.of(Files.readString(said).trim());
  }

  private static void ended(Process process, long minutes, Path said)
      throws IOException, InterruptedException {
    if (!process.waitFor(minutes, TimeUnit.MINUTES)) {
      process.destroyForcibly();
      throw new IOException("not done after " + minutes + " min; see " + said);
    }
    if (process.exitValue() != 0) {
      throw new IOException("exit " + process.exitValue() + "; see " + said);
    }
  }

  private static Path fresh(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted((a, b) -> b.compareTo(a)).toList()) {
          Files.delete(file);
        }
      }
    }
    return Files.createDirectories(folder).toAbsolutePath();
  }

  /** Copies what this test runs with to where the guest sees it; gives its path there. */
  private static String classpath(Path share) throws IOException {
    List<String> there = new ArrayList<>();
    for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
      if (entry.isEmpty()) {
        continue; // it would mean the folder we stand in
      }
      Path from = Path.of(entry);
      Path to = share.resolve(there.size() + "-" + from.getFileName());
      if (Files.isDirectory(from)) {
        copyTree(from, to);
      } else if (Files.exists(from)) {
        Files.copy(from, to);
      }
      there.add("/share/" + to.getFileName());
    }
    return String.join(":", there);
  }

  private static void copyTree(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Path copy = to.resolve(from.relativize(file).toString());
        Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  private static List<String> command(Path machine, Path share, Path out) {
    List<String> words = new ArrayList<>(List.of("qemu-system-aarch64"));
    words.addAll(List.of("-M", "virt", "-cpu", "cortex-a72", "-smp", "2", "-m", "1500"));
    words.addAll(List.of("-accel", "tcg,thread=multi", "-nographic", "-no-reboot", "-nic", "none"));
    words.addAll(List.of("-kernel", machine.resolve("vmlinuz").toString()));
    words.addAll(List.of("-initrd", machine.resolve("first.gz").toString()));
    words.addAll(List.of("-append", "console=ttyAMA0 loglevel=4 panic=-1"));
    words.addAll(folder("root", machine.resolve("root"), ",readonly=on"));
    words.addAll(folder("share", share, ",readonly=on"));
    words.addAll(folder("out", out, ""));
    return words;
  }

  private static List<String> folder(String tag, Path path, String more) {
    return List.of(
        "-virtfs", "local,path=" + path + ",mount_tag=" + tag + ",security_model=none" + more);
  }

  private static Map<String, String> facts(Path out) throws IOException {
    Map<String, String> facts = new TreeMap<>();
    for (String line : Files.readAllLines(out.resolve("facts"), StandardCharsets.UTF_8)) {
      int equals = line.indexOf('=');
      facts.put(line.substring(0, equals), line.substring(equals + 1));
    }
    return facts;
  }

  /** A fact; what is not there was never written. */
  String fact(String key) {
    return facts.getOrDefault(key, "(not written)");
  }

  /** What a program said of errors, all of it. */
  String said(String name) throws IOException {
    return Files.readString(out.resolve(name + ".err"), StandardCharsets.UTF_8).strip();
  }
}
