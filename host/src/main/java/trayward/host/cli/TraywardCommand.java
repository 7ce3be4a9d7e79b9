package trayward.host.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The command line of {@code trayward.jar}. One thread. */
@Command(
    name = "trayward",
    mixinStandardHelpOptions = true,
    versionProvider = TraywardCommand.Version.class,
    description =
        "Holds a tray of hot print developer at a set temperature behind a proven fan, and keeps"
            + " each print with its bath temperature.",
    footer = {
      "",
      "Software only withholds heat. A ground-fault breaker, an independent thermal cut-out, a"
          + " hard-wired airflow contact and a hard-wired stop are required; mains wiring belongs"
          + " to a licensed person under local codes."
    },
    synopsisSubcommandLabel = "COMMAND")
public final class TraywardCommand {

  private final Work work;

  private TraywardCommand(Work work) {
    this.work = work;
  }

  /** The command line over {@code work}; wrong words make one line and exit code 2. */
  public static CommandLine over(Work work) {
    TraywardCommand command = new TraywardCommand(work);
    CommandLine line = new CommandLine(command);
    line.addSubcommand("plan", PlanCommand.line());
    PaperCommand.below(line, work);
    LogCommands.below(line, work);
    line.setParameterExceptionHandler(
        (e, args) -> {
          String message = String.valueOf(e.getMessage()).replace('\n', ' ');
          line.getErr().println("trayward: " + message + " (see --help for what is accepted)");
          return Work.WRONG_WORDS;
        });
    return line;
  }

  /** Without a command: what there is. */
  public static int usage(CommandLine line) {
    line.usage(line.getOut());
    return Work.WRONG_WORDS;
  }

  @Command(
      name = "run",
      mixinStandardHelpOptions = true,
      description = "Runs controller and page in one process, until Ctrl-C. The main job.")
  int run(
      @Option(
              names = "--config",
              paramLabel = "FILE",
              description = "TOML settings; without them a simulated tray")
          @Nullable Path config,
      @Option(
              names = "--demo",
              description = "over an invented season of prints, with the simulated tray")
          boolean demo) {
    return work.run(Optional.ofNullable(config), demo);
  }

  @Command(
      name = "controller",
      mixinStandardHelpOptions = true,
      description = "Runs the controller alone, its registers on the line of [link].")
  int controller(
      @Option(
              names = "--config",
              required = true,
              paramLabel = "FILE",
              description = "TOML settings with a [link] table")
          Path config) {
    return work.controller(config);
  }

  @Command(
      name = "host",
      mixinStandardHelpOptions = true,
      description = "Runs page and log alone, over the line of [link].")
  int host(
      @Option(
              names = "--config",
              required = true,
              paramLabel = "FILE",
              description = "TOML settings with a [link] table")
          Path config) {
    return work.host(config);
  }

  @Command(
      name = "password",
      mixinStandardHelpOptions = true,
      description =
          "Sets the password of the page: asked for at the terminal, or the first line of the"
              + " input.")
  int password(
      @Option(
              names = "--config",
              paramLabel = "FILE",
              description = "TOML settings; its [log] folder keeps the password, stretched")
          @Nullable Path config) {
    return work.password(Optional.ofNullable(config));
  }

  @Command(
      name = "rehearse",
      mixinStandardHelpOptions = true,
      description = "Runs a whole session against the simulated tray, faster than time.")
  int rehearse(
      @Parameters(paramLabel = "SCENARIO.toml", description = "the scenario") Path scenario,
      @Option(
              names = "--out",
              required = true,
              paramLabel = "DIR",
              description = "folder for trace.csv, events.jsonl and result.json")
          Path out) {
    return work.rehearse(scenario, out);
  }

  @Command(
      name = "campaign",
      mixinStandardHelpOptions = true,
      description = "Random faults in random sessions, judged by an independent oracle.")
  int campaign(
      @Option(
              names = "--seeds",
              required = true,
              paramLabel = "N",
              description = "how many sessions, 1 to 1000000")
          long seeds,
      @Option(
              names = "--from",
              paramLabel = "SEED",
              defaultValue = "1",
              description = "seed of the first one (default: ${DEFAULT-VALUE})")
          long from,
      @Option(
              names = "--out",
              required = true,
              paramLabel = "DIR",
              description = "folder for campaign.md, campaign.csv, violations.txt and scenarios")
          Path out) {
    return work.campaign(seeds, from, out);
  }

  @Command(
      name = "goals",
      mixinStandardHelpOptions = true,
      description =
          "Measures the regulator's goals on random trays, beside a plain PID and a thermostat.")
  int goals(
      @Option(
              names = "--trays",
              paramLabel = "N",
              defaultValue = "20",
              description = "how many trays, 1 to 1000 (default: ${DEFAULT-VALUE})")
          long trays,
      @Option(
              names = "--seed",
              paramLabel = "S",
              defaultValue = "1",
              description = "seed of the first one (default: ${DEFAULT-VALUE})")
          long seed,
      @Option(
              names = "--out",
              required = true,
              paramLabel = "DIR",
              description = "folder for goals.md, goals.json, goals.svg and scenarios")
          Path out) {
    return work.goals(trays, seed, out);
  }

  @Command(
      name = "identify",
      mixinStandardHelpOptions = true,
      description = "Finds tray model and regulator settings in a recorded warm-up.")
  int identify(
      @Parameters(paramLabel = "TRACE.csv", description = "trace of a rehearsal or of a rig")
          Path trace,
      @Option(
              names = "--litres",
              paramLabel = "L",
              defaultValue = "1.0",
              description = "liquid at the beginning, L (default: ${DEFAULT-VALUE})")
          double litres,
      @Option(
              names = "--watts",
              paramLabel = "W",
              defaultValue = "250",
              description = "heater, W (default: ${DEFAULT-VALUE})")
          double watts,
      @Option(
              names = "--air",
              paramLabel = "C",
              defaultValue = "20",
              description = "room temperature, °C (default: ${DEFAULT-VALUE})")
          double airC,
      @Option(
              names = "--humidity",
              paramLabel = "SHARE",
              defaultValue = "0.5",
              description = "relative humidity, 0 to 1 (default: ${DEFAULT-VALUE})")
          double humidity,
      @Option(
              names = "--draught",
              paramLabel = "M/S",
              defaultValue = "0.15",
              description = "air speed over the tray, m/s (default: ${DEFAULT-VALUE})")
          double draught,
      @Option(names = "--json", description = "for machines") boolean json) {
    return work.identify(trace, new Declared(litres, watts, airC, humidity, draught), json);
  }

  @Command(
      name = "wiring-check",
      mixinStandardHelpOptions = true,
      description =
          "Shows every input and tries each output by itself, for commissioning. Heat is barred.")
  int wiringCheck(
      @Option(
              names = "--config",
              required = true,
              paramLabel = "FILE",
              description = "TOML settings; probes may still be missing")
          Path config,
      @Option(
              names = "--seconds",
              paramLabel = "N",
              defaultValue = "0",
              description = "how long to watch the inputs first, s (default: ${DEFAULT-VALUE})")
          int seconds,
      @Option(
              names = "--warm",
              description = "finds out which probe is which: you warm one in your hand")
          boolean warm) {
    return work.wiringCheck(config, seconds, warm);
  }

  @Command(
      name = "prints",
      mixinStandardHelpOptions = true,
      description = "Lists prints in the log, newest first.")
  int prints(
      @Option(
              names = "--log",
              paramLabel = "DIR",
              defaultValue = "trayward-data",
              description = "folder of the log (default: ${DEFAULT-VALUE})")
          Path folder,
      @Option(
              names = "--most",
              paramLabel = "N",
              defaultValue = "50",
              description = "how many at the most (default: ${DEFAULT-VALUE})")
          int most) {
    return work.prints(folder, most);
  }

  @Command(
      name = "print",
      mixinStandardHelpOptions = true,
      description = "Shows one print with its marks, temperatures and trace.")
  int print(
      @Parameters(paramLabel = "N", description = "number of the print") long number,
      @Option(
              names = "--log",
              paramLabel = "DIR",
              defaultValue = "trayward-data",
              description = "folder of the log (default: ${DEFAULT-VALUE})")
          Path folder) {
    return work.print(folder, number);
  }

  @Command(
      name = "export",
      mixinStandardHelpOptions = true,
      description = "Writes everything in the log as CSV or JSON, and pictures.")
  int export(
      @Option(
              names = "--out",
              required = true,
              paramLabel = "DIR",
              description = "folder to write to")
          Path out,
      @Option(
              names = "--format",
              paramLabel = "csv|json",
              defaultValue = "csv",
              description = "csv or json (default: ${DEFAULT-VALUE})")
          String format,
      @Option(
              names = "--log",
              paramLabel = "DIR",
              defaultValue = "trayward-data",
              description = "folder of the log (default: ${DEFAULT-VALUE})")
          Path folder) {
    return work.export(folder, out, format);
  }

  /** The version in the archive's manifest. */
  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = TraywardCommand.class.getPackage().getImplementationVersion();
      return new String[] {"trayward " + (version == null ? "(from classes)" : version)};
    }
  }
}
