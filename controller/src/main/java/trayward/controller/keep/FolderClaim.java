package trayward.controller.keep;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The sign that one running controller has a data folder, and with it the tray: two of them would
 * forget each other's latch. The system takes it back however the process ends. One thread.
 */
public final class FolderClaim implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(FolderClaim.class);
  private static final String NAME = "controller.lock";

  private final FileChannel channel;

  private FolderClaim(FileChannel channel) {
    this.channel = channel;
  }

  /**
   * Takes a folder that exists.
   *
   * @throws IOException with one sentence, where another has it or it cannot be written to
   */
  public static FolderClaim take(Path folder) throws IOException {
    FileChannel channel =
        FileChannel.open(folder.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      if (channel.tryLock() != null) {
        return new FolderClaim(channel);
      }
    } catch (OverlappingFileLockException e) {
      LOG.debug("held within this process", e);
    }
    channel.close();
    throw new IOException("another running controller has it");
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      LOG.warn("the data folder's lock was not given back: {}", e.getMessage());
    }
  }
}
