package trayward.host.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The commands that take a log in, check it and copy it. One thread. */
final class LogCommands {

  private static final String CONFIG =
      "TOML settings the log was kept with, for its bath book; without them the standard ones";

  private LogCommands() {}

  /** Puts all of them below another one. */
  static void below(CommandLine line, Work work) {
    line.addSubcommand(new TakeIn(work))
        .addSubcommand(new Check(work))
        .addSubcommand(new Backup(work));
  }

  @Command(
      name = "import",
      mixinStandardHelpOptions = true,
      description = "Takes an exported folder into an empty or new log, all of it or nothing.")
  private static final class TakeIn extends OfLog {

    @Parameters(paramLabel = "DIR", description = "folder of `export`")
    Path from = Path.of("");

    @Option(names = "--config", paramLabel = "FILE", description = CONFIG)
    @Nullable Path config;

    TakeIn(Work work) {
      super(work);
    }

    @Override
    public Integer call() {
      return work.takeIn(from, folder, Optional.ofNullable(config));
    }
  }

  @Command(
      name = "check-log",
      mixinStandardHelpOptions = true,
      description = "Goes through the whole log and tells what is wrong; changes nothing.")
  private static final class Check extends OfLog {

    @Option(names = "--config", paramLabel = "FILE", description = CONFIG)
    @Nullable Path config;

    Check(Work work) {
      super(work);
    }

    @Override
    public Integer call() {
      return work.checkLog(folder, Optional.ofNullable(config));
    }
  }

  @Command(
      name = "backup",
      mixinStandardHelpOptions = true,
      description = "Copies log and pictures, also while a program writes.")
  private static final class Backup extends OfLog {

    @Option(
        names = "--out",
        required = true,
        paramLabel = "DIR",
        description = "folder that is not there yet")
    Path out = Path.of("");

    Backup(Work work) {
      super(work);
    }

    @Override
    public Integer call() {
      return work.backup(folder, out);
    }
  }
}
