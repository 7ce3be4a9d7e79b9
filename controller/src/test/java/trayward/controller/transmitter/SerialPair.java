package trayward.controller.transmitter;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import trayward.controller.modbus.SerialSettings;

/** Two serial ports of the system joined by a cable, made by socat. */
public final class SerialPair implements AutoCloseable {

  private final Process cable;
  private final Path near;
  private final Path far;

  private SerialPair(Process cable, Path near, Path far) {
    this.cable = cable;
    this.near = near;
    this.far = far;
  }

  /** A pair whose ends are in a folder; both are there when this returns. */
  public static SerialPair in(Path folder) {
    Path near = folder.resolve("near");
    Path far = folder.resolve("far");
    Process cable;
    try {
      cable =
          new ProcessBuilder("socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far)
              .inheritIO()
              .start();
    } catch (IOException e) {
      return fail("socat is not here; '.ci/install --tests' installs it", e);
    }
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    while (!Files.exists(near) || !Files.exists(far)) {
      if (!cable.isAlive() || System.nanoTime() > until) {
        return fail("socat made no pair of ports");
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
    }
    return new SerialPair(cable, near, far);
  }

  /** This end. */
  public SerialSettings near() {
    return end(near);
  }

  /** The other end. */
  public SerialSettings far() {
    return end(far);
  }

  // No parity: the ports of such a pair refuse it from their second opening on.
  private static SerialSettings end(Path path) {
    return new SerialSettings(path.toString(), 9600, SerialSettings.Parity.NONE, 1);
  }

  @Override
  public void close() {
    cable.destroyForcibly();
  }
}
