package trayward.host.app;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.Scenario;
import trayward.host.app.campaign.Campaign;
import trayward.host.app.goals.Goals;
import trayward.host.cli.Declared;
import trayward.host.cli.TraywardCommand;
import trayward.host.cli.Work;
import trayward.host.report.ResultMeter;

/** The program's entry: the command line over the work. */
public final class Main implements Work {

  /** Highest first seed: far from where seeds and their multiples would overflow. */
  private static final long MOST_FROM = 1_000_000_000_000L;

  private final PrintStream out;
  private final PrintStream err;

  /** Work that speaks on two streams. */
  Main(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  /** Runs a command and exits with its code. */
  public static void main(String[] args) {
    System.exit(run(args, System.out, System.err));
  }

  /** The same without the exit, for tests. */
  static int run(String[] args, PrintStream out, PrintStream err) {
    CommandLine line = TraywardCommand.over(new Main(out, err));
    line.setOut(new java.io.PrintWriter(out, true, java.nio.charset.StandardCharsets.UTF_8));
    line.setErr(new java.io.PrintWriter(err, true, java.nio.charset.StandardCharsets.UTF_8));
    return args.length == 0 ? TraywardCommand.usage(line) : line.execute(args);
  }

  @Override
  public int run(Optional<Path> config, boolean demo) {
    return new RunRunner(out, err).run(config, demo);
  }

  @Override
  public int controller(Path config) {
    return new ControllerRunner(out, err).run(config);
  }

  @Override
  public int host(Path config) {
    return new HostRunner(out, err).run(config);
  }

  @Override
  public int password(Optional<Path> config) {
    return new PasswordWork(out, err, Terminal.ofThisProcess()).set(config);
  }

  @Override
  public int rehearse(Path file, Path to) {
    try {
      Scenario scenario = Scenario.read(file);
      ResultMeter meter = new RehearseRunner(err).run(scenario, to);
      out.println(RehearseRunner.summary(meter, to));
      return DONE;
    } catch (ConfigRefused e) {
      err.println(e.line());
      return WRONG_WORDS;
    } catch (IOException e) {
      err.println(to + ": cannot be written: " + e.getMessage());
      return FAILED;
    }
  }

  @Override
  public int campaign(long seeds, long from, Path to) {
    if (refused("--seeds", seeds, 1, Campaign.MOST_SEEDS)
        || refused("--from", from, 0, MOST_FROM)) {
      return WRONG_WORDS;
    }
    try {
      int threads = Runtime.getRuntime().availableProcessors();
      Campaign.Result result = new Campaign(err, threads).run(from, seeds, to);
      out.print(result.summary());
      out.println("written to " + to);
      return code(result);
    } catch (IOException e) {
      err.println(to + ": cannot be written: " + e.getMessage());
      return FAILED;
    }
  }

  /** Whether a number is out of its range; it is then told. */
  private boolean refused(String option, long found, long least, long most) {
    boolean out = found < least || found > most;
    if (out) {
      err.println(option + ": found " + found + ", accepted is " + least + " to " + most);
    }
    return out;
  }

  /** A campaign that holds something against the software has failed. */
  static int code(Campaign.Result result) {
    return result.clean() ? DONE : FAILED;
  }

  @Override
  public int goals(long trays, long seed, Path to) {
    if (refused("--trays", trays, 1, Goals.MOST_TRAYS) || refused("--seed", seed, 0, MOST_FROM)) {
      return WRONG_WORDS;
    }
    try {
      int threads = Runtime.getRuntime().availableProcessors();
      Goals.Result result = new Goals(err, threads).run(seed, trays, to);
      out.print(result.summary());
      out.println("written to " + to);
      return code(result);
    } catch (IOException e) {
      err.println(to + ": cannot be written: " + e.getMessage());
      return FAILED;
    }
  }

  /** A goal missed is told by the code too. */
  static int code(Goals.Result result) {
    return result.met() ? DONE : FAILED;
  }

  @Override
  public int identify(Path trace, Declared declared, boolean json) {
    return new IdentifyWork(out, err).identify(trace, declared, json);
  }

  @Override
  public int wiringCheck(Path config, int seconds, boolean warm) {
    if (refused("--seconds", seconds, 0, WiringCheckWork.MOST_SECONDS)) {
      return WRONG_WORDS;
    }
    return new WiringCheckWork(out, err, Terminal.ofThisProcess(), Pace.REAL)
        .check(config, seconds, warm);
  }

  @Override
  public int prints(Path folder, int most) {
    return new LogWork(out, err).prints(folder, most);
  }

  @Override
  public int print(Path folder, long number) {
    return new LogWork(out, err).print(folder, number);
  }

  @Override
  public int export(Path folder, Path to, String format) {
    return new LogWork(out, err).export(folder, to, format);
  }

  @Override
  public int card(Path folder, long number, Path to) {
    return new LogWork(out, err).card(folder, number, to);
  }

  @Override
  public int sheet(Path folder, long session, Path to) {
    return new LogWork(out, err).sheet(folder, session, to);
  }

  @Override
  public int takeIn(Path from, Path folder, Optional<Path> config) {
    return new LogMoves(out, err).takeIn(from, folder, config);
  }

  @Override
  public int checkLog(Path folder, Optional<Path> config) {
    return new LogMoves(out, err).check(folder, config);
  }

  @Override
  public int backup(Path folder, Path to) {
    return new LogMoves(out, err).backup(folder, to);
  }
}
