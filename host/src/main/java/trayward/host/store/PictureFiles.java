package trayward.host.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * The folder of pictures beside the log. A name is only ever given to a file that is whole.
 *
 * @param folder the folder; it need not be there yet
 */
record PictureFiles(Path folder) {

  /** Name of the folder. */
  static final String NAME = "pictures";

  /** Names there can be: nothing in them leads out of the folder. */
  static final String NAMES = "[a-z0-9-]{1,80}\\.(jpg|png)";

  private static final String PART = ".part";

  /** Those beside a log. */
  static PictureFiles of(Path log) {
    return new PictureFiles(log.resolveSibling(NAME));
  }

  /** Where an original or the small picture beside it lies. */
  Path of(String name, boolean small) {
    if (!name.matches(NAMES)) {
      throw new IllegalArgumentException("no name of a picture: " + name);
    }
    String stem = name.substring(0, name.lastIndexOf('.'));
    return folder.resolve(small ? stem + "-small.jpg" : name);
  }

  /** A new file for what is being brought in. */
  Path part() throws IOException {
    Files.createDirectories(folder);
    return Files.createTempFile(folder, "in-", PART);
  }

  /** Forces a file to the disk and gives it its name. */
  static void name(Path part, Path whole) throws IOException {
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE);
  }

  /** Forces the names of files to the disk. */
  void forceNames() throws IOException {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }

  /** Removes what a killed program left half brought in. */
  void clear() throws IOException {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, "*" + PART)) {
      for (Path part : parts) {
        Files.deleteIfExists(part);
      }
    }
  }
}
