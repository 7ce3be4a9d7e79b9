package trayward.host.app;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.Settings;
import trayward.host.cli.Work;
import trayward.host.report.LogFolder;
import trayward.host.store.BookModel;
import trayward.host.store.LogCopies;
import trayward.host.store.LogCounts;
import trayward.host.store.LogFailed;
import trayward.host.store.LogFile;
import trayward.host.store.LogFinding;
import trayward.host.store.LogRefused;
import trayward.host.store.RowRefused;

/** Commands that take a log in, check it and copy it. One thread. */
final class LogMoves {

  private final PrintStream out;
  private final PrintStream err;

  LogMoves(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  private interface Moving {
    int with(BookModel model) throws LogRefused, IOException;
  }

  int takeIn(Path from, Path folder, Optional<Path> config) {
    return done(
        config,
        model -> {
          LogCounts counts = LogFile.takeIn(folder, model, new LogFolder(from));
          out.println("imported into " + folder + ": " + words(counts));
          return Work.DONE;
        });
  }

  int check(Path folder, Optional<Path> config) {
    return done(
        config,
        model -> {
          LogCopies.Checkup checkup = LogCopies.check(folder, model);
          out.println(words(checkup.counts()));
          checkup.findings().stream().map(LogFinding::line).forEach(out::println);
          out.println(
              checkup.findings().isEmpty()
                  ? "nothing is wrong"
                  : checkup.findings().size() + " findings");
          return checkup.findings().isEmpty() ? Work.DONE : Work.FAILED;
        });
  }

  int backup(Path folder, Path to) {
    return done(
        Optional.empty(),
        model -> {
          long missing = LogCopies.copy(folder, to);
          out.println("copied to " + to);
          if (missing > 0) {
            err.println(missing + " pictures have no file; the copy lacks them too");
          }
          return Work.DONE;
        });
  }

  private static String words(LogCounts c) {
    return String.format(
        "%d sessions, %d prints, %d marks (%d taken back), %d baths with %d entries, %d events,"
            + " %d samples",
        c.sessions(),
        c.prints(),
        c.marks(),
        c.marksUndone(),
        c.baths(),
        c.additions(),
        c.events(),
        c.traceSamples());
  }

  private int done(Optional<Path> config, Moving moving) {
    try {
      BookModel model =
          config.isPresent() ? BookSettings.of(Settings.read(config.get())) : BookModel.STANDARD;
      return moving.with(model);
    } catch (ConfigRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    } catch (RowRefused e) {
      err.println(e.getMessage());
      return Work.WRONG_WORDS;
    } catch (LogRefused e) {
      err.println(e.getMessage());
      // A damaged log is what a check is for.
      return e.reason() == LogRefused.Reason.DAMAGED ? Work.FAILED : LogWork.exitCode(e);
    } catch (LogFailed | IOException e) {
      err.println(e.getMessage());
      return Work.FAILED;
    }
  }
}
