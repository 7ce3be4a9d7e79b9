package trayward.host.cli;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What the commands ask for; {@code app} does it. Each returns an exit code: 0 done, 1 the work
 * failed, 2 the words or a file were wrong, told in one line on standard error.
 */
public interface Work {

  /** The work is done. */
  int DONE = 0;

  /** The work failed. */
  int FAILED = 1;

  /** The words or a file were wrong. */
  int WRONG_WORDS = 2;

  /**
   * Controller and host in one process, until stopped.
   *
   * @param demo whether over an invented season, with the simulated tray
   */
  int run(Optional<Path> config, boolean demo);

  /** The controller alone, until stopped. */
  int controller(Path config);

  /** Page and log alone, until stopped. */
  int host(Path config);

  /** Sets the page's password, as the terminal or the input says it. */
  int password(Optional<Path> config);

  /** A scenario against the simulated tray. */
  int rehearse(Path scenario, Path out);

  /** Random faults in random sessions, {@code seeds} of them from seed {@code from} on. */
  int campaign(long seeds, long from, Path out);

  /** The regulator's goals on {@code trays} random trays from seed {@code seed} on. */
  int goals(long trays, long seed, Path out);

  /** The tray in a recorded warm-up, as text or, where {@code json}, for machines. */
  int identify(Path trace, Declared declared, boolean json);

  /**
   * Inputs and outputs of an installation, heat barred.
   *
   * @param seconds how long inputs are watched, s
   * @param warm whether to find out which probe is which, in place of trying outputs
   */
  int wiringCheck(Path config, int seconds, boolean warm);

  /** Lists prints, newest first. */
  int prints(Path folder, int most);

  /** Shows one print. */
  int print(Path folder, long number);

  /** Writes a card of one print as a PDF. */
  int card(Path folder, long number, Path out);

  /** Writes a sheet of one session as HTML. */
  int sheet(Path folder, long session, Path out);

  /** Writes prints and their traces to a folder. */
  int export(Path folder, Path out, String format);

  /** Takes an exported folder into an empty or new log. */
  int takeIn(Path from, Path folder, Optional<Path> config);

  /** Goes through a log and tells what is wrong. */
  int checkLog(Path folder, Optional<Path> config);

  /** Copies a log and its pictures. */
  int backup(Path folder, Path out);
}
