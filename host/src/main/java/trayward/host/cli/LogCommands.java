package trayward.host.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The commands that take a log in, check it and copy it. One thread. */
@Command
final class LogCommands {

  private static final String CONFIG =
      "TOML settings the log was kept with, for its bath book; without them the standard ones";

  private final Work work;

  private LogCommands(Work work) {
    this.work = work;
  }

  /** Adds them to a command line. */
  static void addTo(CommandLine line, Work work) {
    new CommandLine(new LogCommands(work)).getSubcommands().forEach(line::addSubcommand);
  }

  @Command(
      name = "import",
      mixinStandardHelpOptions = true,
      description = "Takes an exported folder into an empty or new log, all of it or nothing.")
  int takeIn(
      @Parameters(paramLabel = "DIR", description = "folder of `export`") Path from,
      @Option(
              names = "--log",
              paramLabel = "DIR",
              defaultValue = "trayward-data",
              description = "folder of the log (default: ${DEFAULT-VALUE})")
          Path folder,
      @Option(names = "--config", paramLabel = "FILE", description = CONFIG)
          @Nullable Path config) {
    return work.takeIn(from, folder, Optional.ofNullable(config));
  }

  @Command(
      name = "check-log",
      mixinStandardHelpOptions = true,
      description = "Goes through the whole log and tells what is wrong; changes nothing.")
  int check(
      @Option(
              names = "--log",
              paramLabel = "DIR",
              defaultValue = "trayward-data",
              description = "folder of the log (default: ${DEFAULT-VALUE})")
          Path folder,
      @Option(names = "--config", paramLabel = "FILE", description = CONFIG)
          @Nullable Path config) {
    return work.checkLog(folder, Optional.ofNullable(config));
  }

  @Command(
      name = "backup",
      mixinStandardHelpOptions = true,
      description = "Copies log and pictures, also while a program writes.")
  int backup(
      @Option(
              names = "--out",
              required = true,
              paramLabel = "DIR",
              description = "folder that is not there yet")
          Path out,
      @Option(
              names = "--log",
              paramLabel = "DIR",
              defaultValue = "trayward-data",
              description = "folder of the log (default: ${DEFAULT-VALUE})")
          Path folder) {
    return work.backup(folder, out);
  }
}
