package trayward.host.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.Optional;

/** A person who can answer, or nobody. One thread. */
interface Terminal {

  /** Whether somebody sits at it. */
  boolean attended();

  /** The next line; empty where there is no more. Waits for it. */
  Optional<String> line();

  /**
   * Standard input of this process, where that is a terminal. Answers out of a file or a pipe are
   * nobody's: no relay is closed for them.
   */
  static Terminal ofThisProcess() {
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
    boolean attended = isTerminal();
    return new Terminal() {
      @Override
      public boolean attended() {
        return attended;
      }

      @Override
      public Optional<String> line() {
        try {
          return Optional.ofNullable(in.readLine());
        } catch (IOException e) {
          return Optional.empty();
        }
      }
    };
  }

  /** The system's own name of the input tells; the Java console also minds where output goes. */
  private static boolean isTerminal() {
    try {
      String name = Path.of("/proc/self/fd/0").toRealPath().toString();
      return name.startsWith("/dev/pts/")
          || name.startsWith("/dev/tty")
          || name.equals("/dev/console");
    } catch (IOException | RuntimeException e) {
      return false;
    }
  }
}
