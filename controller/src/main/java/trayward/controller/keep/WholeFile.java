package trayward.controller.keep;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Replaces a small file whole and durably: written beside it, forced to the disk, renamed over, and
 * the folder forced too. Stateless; blocks as long as the disk does.
 */
final class WholeFile {

  private WholeFile() {}

  /** Puts {@code text} in the file's place; on failure the file is as it was. */
  static void replace(Path file, String text) throws IOException {
    Path beside = file.resolveSibling(file.getFileName() + ".new");
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
    try (FileChannel channel =
        FileChannel.open(
            beside,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    }
    Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    forceFolderOf(file);
  }

  /** A new name is durable only once its folder is: a latch must outlive a power cut. */
  static void forceFolderOf(Path file) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    try (FileChannel channel =
        FileChannel.open(folder == null ? file : folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }
}
