package trayward.host.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The sign that one running program has the data folder. The operating system takes it back when
 * the process ends, however it ends, so the file itself may stay.
 */
public final class FolderLock implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(FolderLock.class);

  /** Name of the file the lock is on. */
  static final String NAME = "trayward-log.lock";

  private final Path file;
  private final FileChannel channel;

  private FolderLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Holds a data folder, made where there is none, without opening a log in it: for what must not
   * run beside a running program.
   *
   * @throws LogRefused where the folder is in use or out of reach
   */
  public static FolderLock hold(Path folder) throws LogRefused {
    Path whole = folder.toAbsolutePath();
    try {
      Files.createDirectories(whole);
    } catch (IOException e) {
      throw new LogRefused(
          LogRefused.Reason.UNREACHABLE,
          "The folder " + whole + " cannot be made: " + e.getMessage() + ".");
    }
    return take(whole);
  }

  /** Takes the lock in an existing folder, or refuses where it is taken. */
  static FolderLock take(Path folder) throws LogRefused {
    Path file = folder.resolve(NAME);
    try {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (!locked(channel)) {
        channel.close();
        throw new LogRefused(
            LogRefused.Reason.IN_USE,
            folder.resolve(LogFile.NAME) + " is in use by another running Trayward.");
      }
      return new FolderLock(file, channel);
    } catch (IOException e) {
      throw new LogRefused(
          LogRefused.Reason.UNREACHABLE, file + " cannot be written: " + e.getMessage() + ".");
    }
  }

  private static boolean locked(FileChannel channel) throws IOException {
    try {
      FileLock lock = channel.tryLock();
      return lock != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      LOG.warn("{} did not close cleanly: {}", file, e.toString());
    }
  }
}
