package trayward.host.app.goals;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/**
 * Measures the goals: trays on at most two threads, gathered in order of seeds on the caller's, so
 * that the number of threads changes nothing.
 */
public final class Goals {

  /** Most trays of one run: some hours of two processors. */
  public static final long MOST_TRAYS = 1000;

  /** Threads at most: a person works on the same computer. */
  private static final int MOST_THREADS = 2;

  private final PrintStream err;
  private final int threads;

  /**
   * A run.
   *
   * @param err where the progress bar goes
   * @param threads trays run at once, two at the most
   */
  public Goals(PrintStream err, int threads) {
    this.err = err;
    this.threads = Math.min(MOST_THREADS, threads);
  }

  /**
   * How it ended.
   *
   * @param met no goal is missed
   * @param summary the table
   */
  public record Result(boolean met, String summary) {}

  /** Runs {@code trays} trays from seed {@code from} on and writes the report into {@code to}. */
  public Result run(long from, long trays, Path to) throws IOException {
    Files.createDirectories(to);
    removeScenarios(to);
    long began = System.nanoTime();
    Measured measured = new Measured(from, figures(from, trays));
    double wallS = (System.nanoTime() - began) / 1e9;
    Files.writeString(to.resolve("goals.json"), GoalsJson.of(measured));
    Files.writeString(to.resolve("goals.md"), GoalsNote.of(measured, wallS));
    Files.writeString(to.resolve("goals.svg"), GoalsPlot.of(measured));
    writeScenarios(measured, to);
    return new Result(measured.missed().isEmpty(), GoalsText.of(measured, wallS));
  }

  private List<TrayFigures> figures(long from, long trays) throws IOException {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    List<TrayFigures> done = new ArrayList<>();
    try (ProgressBar bar = bar(trays)) {
      List<Future<TrayFigures>> ahead = new ArrayList<>();
      for (long seed = from; seed < from + trays; seed++) {
        long next = seed;
        ahead.add(pool.submit(() -> TrayFigures.of(next)));
      }
      for (Future<TrayFigures> tray : ahead) {
        done.add(await(tray));
        bar.step();
      }
    } finally {
      pool.shutdownNow();
    }
    return done;
  }

  private static TrayFigures await(Future<TrayFigures> tray) throws IOException {
    try {
      return tray.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  private static void writeScenarios(Measured measured, Path to) throws IOException {
    for (GoalCase in : GoalCase.values()) {
      for (long seed : measured.worstSeeds(in)) {
        TrayDraw tray = TrayDraw.of(seed, in.plateFitted());
        Files.writeString(to.resolve(fileName(in, seed)), GoalScenario.of(tray, in).toml());
      }
    }
  }

  /** Where the scenario of a worst tray lies. */
  static String fileName(GoalCase in, long seed) {
    return "worst-" + in.key() + "-seed-" + seed + ".toml";
  }

  /** Scenarios of an earlier run would pass for the worst of this one. */
  private static void removeScenarios(Path folder) throws IOException {
    try (DirectoryStream<Path> old = Files.newDirectoryStream(folder, "worst-*.toml")) {
      for (Path file : old) {
        Files.delete(file);
      }
    }
  }

  private ProgressBar bar(long trays) {
    return new ProgressBarBuilder()
        .setTaskName("goals")
        .setInitialMax(trays)
        .setUnit(" trays", 1)
        .setStyle(ProgressBarStyle.ASCII)
        .setConsumer(new ConsoleProgressBarConsumer(err, 78))
        .build();
  }
}
