package trayward.host.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A serial cable that can be pulled out: a pair of pseudo-terminals made by socat. */
final class Cable implements AutoCloseable {

  private final Path tray;
  private final Path desk;
  private Process socat;

  Cable(Path folder) throws IOException {
    this.tray = folder.resolve("tray-end");
    this.desk = folder.resolve("desk-end");
    this.socat = plugged();
  }

  private Process plugged() throws IOException {
    Process process =
        new ProcessBuilder("socat", "pty,raw,echo=0,link=" + tray, "pty,raw,echo=0,link=" + desk)
            .inheritIO()
            .start();
    while (!Files.exists(tray) || !Files.exists(desk)) {
      if (!process.isAlive()) {
        throw new IOException("socat has ended with " + process.exitValue());
      }
      Thread.onSpinWait();
    }
    return process;
  }

  Path tray() {
    return tray;
  }

  Path desk() {
    return desk;
  }

  /** Both ends are gone, as with an adapter pulled out. */
  void pull() throws InterruptedException {
    socat.destroy();
    socat.waitFor();
  }

  /** Both ends are back, as other devices under the same names. */
  void plug() throws IOException {
    socat = plugged();
  }

  @Override
  public void close() {
    socat.destroy();
  }
}
