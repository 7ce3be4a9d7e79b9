package trayward.host.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/**
 * What the kernel says of a process, see proc(5).
 *
 * @param residentMib pages in memory, MiB
 * @param proportionalMib the same with each shared page divided by those who share it, MiB; NaN
 *     where the kernel does not tell
 * @param threads its threads
 * @param files its open descriptors
 * @param cpuS processor time it took, s
 */
record ProcessFigures(
    double residentMib, double proportionalMib, int threads, int files, double cpuS) {

  /** Clock ticks a second in what the kernel tells: 100 on every Linux with Java 17. */
  private static final double TICKS_PER_S = 100;

  /** Fields of {@code stat} after the name in brackets: user and system time. */
  private static final int USER_TIME = 11;

  static ProcessFigures of(long pid) throws IOException {
    Path proc = Path.of("/proc", Long.toString(pid));
    String stat = Files.readString(proc.resolve("stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ", -1);
    double ticks =
        Double.parseDouble(fields[USER_TIME]) + Double.parseDouble(fields[USER_TIME + 1]);
    return new ProcessFigures(
        number(proc.resolve("status"), "VmRSS:") / 1024,
        number(proc.resolve("smaps_rollup"), "Pss:") / 1024,
        count(proc.resolve("task")),
        count(proc.resolve("fd")),
        ticks / TICKS_PER_S);
  }

  /** Open descriptors of this very process, without the one that looks. */
  static int ownFiles() throws IOException {
    return count(Path.of("/proc/self/fd")) - 1;
  }

  private static double number(Path file, String key) {
    try (Stream<String> lines = Files.lines(file)) {
      return lines
          .filter(line -> line.startsWith(key))
          .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")))
          .findFirst()
          .orElse(Double.NaN);
    } catch (IOException e) {
      return Double.NaN;
    }
  }

  private static int count(Path folder) throws IOException {
    try (Stream<Path> each = Files.list(folder)) {
      return (int) each.count();
    }
  }
}
