package trayward.host.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Option;

/** What commands about a log take; filled in before a call. One thread. */
abstract class OfLog implements Callable<Integer> {

  final Work work;

  @Option(
      names = "--log",
      paramLabel = "DIR",
      defaultValue = "trayward-data",
      description = "folder of the log (default: ${DEFAULT-VALUE})")
  Path folder = Path.of("");

  OfLog(Work work) {
    this.work = work;
  }
}
