package trayward.host.deb;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A folder that dpkg takes for a whole system, with a database of its own. One thread. */
final class TestRoot {

  private final Path root;
  private final Path log;

  TestRoot(Path root) throws IOException {
    this.root = root;
    this.log = root.resolveSibling("dpkg.log");
    for (String folder : List.of("updates", "info", "triggers")) {
      Files.createDirectories(root.resolve("var/lib/dpkg").resolve(folder));
    }
    Files.createDirectories(root.resolve("etc"));
    Files.createFile(root.resolve("var/lib/dpkg/status"));
    Files.createFile(root.resolve("var/lib/dpkg/available"));
  }

  Path at(String path) {
    return root.resolve(path.substring(1));
  }

  /** dpkg with these words; what the package depends on is that of the computer around it. */
  String dpkg(String... words) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                "dpkg",
                "--root=" + root,
                "--log=" + log,
                "--force-script-chrootless",
                "--force-depends"));
    command.addAll(List.of(words));
    return run(command);
  }

  /** What a command said; an exit code other than 0 is a failure that says it. */
  static String run(List<String> command) throws Exception {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C.UTF-8");
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IOException(command + " said: " + said);
    }
    return said;
  }

  /** Whether the computer has a program. */
  static boolean has(String program) {
    return Files.isExecutable(Path.of("/usr/bin", program));
  }

  /** The words after {@code ExecStart=} of an installed unit, its paths moved into this root. */
  List<String> start(String half) throws IOException {
    String unit =
        Files.readString(at("/usr/lib/systemd/system/trayward-" + half + ".service"))
            .lines()
            .filter(line -> line.startsWith("ExecStart="))
            .findFirst()
            .orElseThrow()
            .substring("ExecStart=".length());
    List<String> words = new ArrayList<>();
    for (String word : unit.split(" ", -1)) {
      words.add(word.replaceFirst("^(@|[^/]*=)?(/usr/share|/var|/etc)/", "$1" + root + "$2/"));
    }
    words.set(0, Path.of(System.getProperty("java.home"), "bin", "java").toString());
    return words;
  }
}
