package trayward.host.app.campaign;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/**
 * Runs a campaign: sessions on several threads, judged and counted in order of seeds on the
 * caller's, so that the number of threads changes nothing.
 */
public final class Campaign {

  /** Most sessions of one campaign: a week of two processors. */
  public static final long MOST_SEEDS = 1_000_000;

  /** Sessions under way for each thread: keeps all busy while the oldest is awaited. */
  private static final int AHEAD = 8;

  private final PrintStream err;
  private final int threads;

  /**
   * A campaign.
   *
   * @param err where the progress bar goes
   * @param threads sessions run at once
   */
  public Campaign(PrintStream err, int threads) {
    this.err = err;
    this.threads = threads;
  }

  /**
   * How it ended.
   *
   * @param clean nothing is held against the software
   * @param summary one screen of words
   */
  public record Result(boolean clean, String summary) {}

  /**
   * Runs {@code seeds} sessions from seed {@code from} on and writes the report into {@code to}.
   */
  public Result run(long from, long seeds, Path to) throws IOException {
    Files.createDirectories(to);
    removeScenarios(to);
    long began = System.nanoTime();
    Tally tally = new Tally();
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try (SessionFiles files = new SessionFiles(to, seeds == 1);
        ProgressBar bar = bar(seeds)) {
      Deque<Future<Outcome>> ahead = new ArrayDeque<>();
      for (long seed = from; seed < from + seeds || !ahead.isEmpty(); ) {
        if (seed < from + seeds && ahead.size() < AHEAD * threads) {
          long next = seed++;
          ahead.add(pool.submit(() -> SessionRun.of(SessionDice.of(next))));
        } else {
          Outcome session = await(ahead.remove());
          tally.add(session);
          files.add(session);
          bar.step();
        }
      }
    } finally {
      pool.shutdownNow();
    }
    double wallS = (System.nanoTime() - began) / 1e9;
    Files.writeString(to.resolve("campaign.md"), ReportText.of(tally, from, wallS));
    Files.writeString(to.resolve("campaign.csv"), ReportCsv.of(tally));
    return new Result(tally.violating == 0, ReportText.summary(tally, from, wallS));
  }

  private static Outcome await(Future<Outcome> session) throws IOException {
    try {
      return session.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  /** Scenarios of an earlier campaign would pass for violations of this one. */
  private static void removeScenarios(Path folder) throws IOException {
    try (DirectoryStream<Path> old = Files.newDirectoryStream(folder, "seed-*.toml")) {
      for (Path file : old) {
        Files.delete(file);
      }
    }
  }

  private ProgressBar bar(long seeds) {
    return new ProgressBarBuilder()
        .setTaskName("campaign")
        .setInitialMax(seeds)
        .setUnit(" sessions", 1)
        .setStyle(ProgressBarStyle.ASCII)
        .setConsumer(new ConsoleProgressBarConsumer(err, 78))
        .build();
  }
}
