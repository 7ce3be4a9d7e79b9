package trayward.controller.watchdog;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import trayward.controller.port.OutsideWatchdog;

/**
 * The kernel's watchdog device: from its opening on it restarts the computer unless a byte comes
 * within its time-out. A {@code V} before the close disarms it ("magic close", the kernel's
 * documentation, watchdog/watchdog-api), except where the kernel was built never to let go. Opened
 * by one thread, then used by one.
 */
public final class WatchdogDevice implements OutsideWatchdog {

  /** At most a byte a second: devices count in seconds, commonly 10 to 60 of them. */
  private static final long PERIOD_MS = 1000;

  /** Any byte but the magic one. */
  private static final byte ALIVE = '.';

  private static final byte MAGIC_CLOSE = 'V';

  private final Path path;
  private final FileChannel device;

  private WatchdogDevice(Path path, FileChannel device) {
    this.path = path;
    this.device = device;
  }

  /**
   * Opens it, which arms it.
   *
   * @throws IOException with the reason in words
   */
  public static WatchdogDevice open(Path path) throws IOException {
    try {
      return new WatchdogDevice(path, FileChannel.open(path, StandardOpenOption.WRITE));
    } catch (NoSuchFileException e) {
      throw new IOException("there is no such device", e);
    } catch (AccessDeniedException e) {
      throw new IOException("this user may not write to it", e);
    } catch (FileSystemException e) {
      String reason = e.getReason();
      throw new IOException(reason == null ? "it cannot be opened" : reason, e);
    }
  }

  @Override
  public String name() {
    return path.toString();
  }

  @Override
  public long periodMs() {
    return PERIOD_MS;
  }

  @Override
  public void feed(String status) throws IOException {
    write(ALIVE);
  }

  /** Not in order: closed without the magic, so that the computer restarts. */
  @Override
  public void end(boolean orderly) throws IOException {
    try (device) {
      if (orderly) {
        write(MAGIC_CLOSE);
      }
    }
  }

  private void write(byte what) throws IOException {
    if (device.write(ByteBuffer.wrap(new byte[] {what})) != 1) {
      throw new IOException("it took nothing");
    }
  }
}
