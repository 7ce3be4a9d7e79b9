package trayward.host.app;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trayward.host.cli.Work;
import trayward.host.report.BookExport;
import trayward.host.report.LogExport;
import trayward.host.report.PrintExport;
import trayward.host.report.PrintText;
import trayward.host.report.card.PrintCard;
import trayward.host.report.card.SessionSheet;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.session.Session;
import trayward.host.store.LogFailed;
import trayward.host.store.LogFile;
import trayward.host.store.LogReader;
import trayward.host.store.LogRefused;

/** Commands that read the log, beside a running program too. One thread. */
final class LogWork {

  private final PrintStream out;
  private final PrintStream err;

  LogWork(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  private interface Reading {
    int with(LogReader log) throws IOException;
  }

  int prints(Path folder, int most) {
    return read(
        folder,
        log -> {
          inventedOrNot(log);
          List<Print> prints = log.prints(Math.max(0, most), 0);
          out.print(PrintText.list(prints, log::summaryOf, log.archive().fields(prints)));
          return Work.DONE;
        });
  }

  int print(Path folder, long number) {
    return read(
        folder,
        log -> {
          Optional<Print> print = log.print(number);
          if (print.isEmpty()) {
            return noPrint(log, number);
          }
          inventedOrNot(log);
          double inS = print.get().inAt().map(Mark::sessionS).orElse(0.0);
          out.print(
              PrintText.whole(
                  print.get(),
                  log.summaryOf(print.get()),
                  log.archive().entries(number),
                  inS,
                  log.traceOf(print.get())));
          return Work.DONE;
        });
  }

  /** Of an invented season nothing is shown without saying so. */
  private void inventedOrNot(LogReader log) {
    if (log.invented()) {
      out.println("INVENTED SEASON: no print in it was ever made.");
    }
  }

  private int noPrint(LogReader log, long number) {
    err.println(
        "print " + number + ": not in " + log.file() + ", accepted is a number of `prints`");
    return Work.WRONG_WORDS;
  }

  int card(Path folder, long number, Path to) {
    return read(
        folder,
        log -> {
          Optional<Print> print = log.print(number);
          if (print.isEmpty()) {
            return noPrint(log, number);
          }
          Files.write(to, PrintCard.pdf(log, print.get()));
          out.println("card of print " + number + " written to " + to);
          return Work.DONE;
        });
  }

  int sheet(Path folder, long id, Path to) {
    return read(
        folder,
        log -> {
          Optional<Session> session = log.session(id);
          if (session.isEmpty()) {
            err.println(
                "session " + id + ": not in " + log.file() + ", accepted is a session's id");
            return Work.WRONG_WORDS;
          }
          Files.writeString(to, SessionSheet.html(log, session.get()));
          out.println("sheet of session " + id + " written to " + to);
          return Work.DONE;
        });
  }

  int export(Path folder, Path to, String format) {
    if (!format.equals("csv") && !format.equals("json")) {
      err.println("--format: found '" + format + "', accepted is csv or json");
      return Work.WRONG_WORDS;
    }
    return read(
        folder,
        log -> {
          IOException[] failed = new IOException[1];
          log.whole()
              .atOneMoment(
                  () -> {
                    try {
                      export(log, to, format);
                    } catch (IOException e) {
                      failed[0] = e;
                    }
                  });
          if (failed[0] != null) {
            throw failed[0];
          }
          return Work.DONE;
        });
  }

  private void export(LogReader log, Path to, String format) throws IOException {
    long count =
        PrintExport.write(
            to,
            format,
            offset -> log.prints(1000, offset),
            log::summaryOf,
            print -> log.archive().entries(print.number()),
            log::traceOf,
            log.invented());
    int baths = BookExport.write(to, log.books(), sessions(log), session -> symptoms(log, session));
    for (String name : LogExport.write(to, log.whole())) {
      err.println("pictures/" + name + ": missing");
    }
    out.println(count + " prints and the books of " + baths + " baths written to " + to);
  }

  private static List<Session> sessions(LogReader log) {
    List<Session> all = new ArrayList<>();
    List<Session> page = log.sessions(LogReader.ROWS_MAX, 0);
    while (!page.isEmpty()) {
      all.addAll(page);
      page = log.sessions(LogReader.ROWS_MAX, all.size());
    }
    return all;
  }

  private static String symptoms(LogReader log, Session session) {
    return log.archive().symptoms(List.of(session.id())).getOrDefault(session.id(), "");
  }

  private int read(Path folder, Reading reading) {
    try (LogReader log = LogFile.openToRead(folder)) {
      return reading.with(log);
    } catch (LogRefused e) {
      err.println(e.getMessage());
      return exitCode(e);
    } catch (LogFailed e) {
      err.println(e.getMessage());
      return Work.FAILED;
    } catch (IOException e) {
      err.println("cannot be written: " + e.getMessage());
      return Work.FAILED;
    }
  }

  /** A log in use is work that failed; one that is no log of ours is a wrong file. */
  static int exitCode(LogRefused refused) {
    return switch (refused.reason()) {
      case IN_USE, UNREACHABLE -> Work.FAILED;
      case DAMAGED, NEWER, OLDER, FOREIGN, MISSING -> Work.WRONG_WORDS;
    };
  }
}
