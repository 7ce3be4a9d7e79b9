package trayward.host.app;

import java.io.Console;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Optional;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.Settings;
import trayward.host.cli.Work;
import trayward.host.web.guard.PasswordFile;
import trayward.host.web.guard.PasswordHash;

/**
 * Sets the page's password, as the person says it: at a terminal, without an echo and twice, or as
 * the first line of what is piped in. Never out of the command line, which others can see. One
 * thread.
 */
final class PasswordWork {

  private final PrintStream out;
  private final PrintStream err;
  private final Terminal terminal;

  PasswordWork(PrintStream out, PrintStream err, Terminal terminal) {
    this.out = out;
    this.err = err;
    this.terminal = terminal;
  }

  int set(Optional<Path> config) {
    try {
      Settings settings = config.isPresent() ? Settings.read(config.get()) : Settings.standard();
      PasswordFile file = new PasswordFile(settings.logFolder());
      Optional<char[]> said = said();
      if (said.isEmpty() || !PasswordHash.fits(said.get().length)) {
        err.println(
            "password: found "
                + said.map(s -> s.length + " characters").orElse("nothing, or not the same twice")
                + ", accepted are "
                + PasswordHash.LEAST
                + " to "
                + PasswordHash.MOST
                + " characters");
        return Work.WRONG_WORDS;
      }
      file.write(PasswordHash.of(said.get(), new SecureRandom()));
      Arrays.fill(said.get(), ' ');
      out.println("The password is kept, stretched, in " + file.path().toAbsolutePath());
      out.println("It counts from the next start of run or host on.");
      return Work.DONE;
    } catch (ConfigRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    } catch (IOException e) {
      err.println(PasswordFile.NAME + ": cannot be written: " + e.getMessage());
      return Work.FAILED;
    }
  }

  @SuppressWarnings("SystemConsoleNull") // from Java 22 on there is one, and it hides what is typed
  private Optional<char[]> said() {
    if (!terminal.attended()) {
      return terminal.line().map(String::toCharArray);
    }
    Console console = System.console();
    if (console == null) {
      return Optional.empty(); // it would be shown while it is written
    }
    char[] once = console.readPassword("Password for the page: ");
    char[] again = console.readPassword("The same again: ");
    boolean same = once != null && Arrays.equals(once, again);
    return same ? Optional.of(once) : Optional.empty();
  }
}
