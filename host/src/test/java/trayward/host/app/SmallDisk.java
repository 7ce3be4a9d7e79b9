package trayward.host.app;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A disk of a few megabytes that can be filled, or made to report errors. It is a file system in
 * memory; the failing one is ext4 on a file there that claims more room than the memory has, so
 * that its writes fail as on a worn card; it can also be turned read-only. Mounting takes root.
 */
final class SmallDisk implements AutoCloseable {

  /** What the memory under a disk has, MB: a log with some minutes of trace takes one. */
  private static final int MEMORY_MB = 12;

  /** What the ext4 disk claims to have, MB. */
  private static final int CLAIMED_MB = 64;

  private final Path memory;
  private final Path disk;

  private SmallDisk(Path memory, Path disk) {
    this.memory = memory;
    this.disk = disk;
  }

  /** Whether this user may mount at all. */
  static boolean possible(Path at) throws IOException {
    try {
      plain(at).close();
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  /** A disk that can be filled. */
  static SmallDisk plain(Path at) throws IOException {
    Files.createDirectories(at);
    run("mount", "-t", "tmpfs", "-o", "size=" + MEMORY_MB + "m", "tmpfs", at.toString());
    return new SmallDisk(at, at);
  }

  /** A disk that reports errors once it is used beyond its memory, and turns read-only. */
  static SmallDisk failing(Path at) throws IOException {
    SmallDisk under = plain(at.resolveSibling(at.getFileName() + "-memory"));
    Path image = under.memory.resolve("image");
    run("truncate", "-s", CLAIMED_MB + "M", image.toString());
    run("mkfs.ext4", "-q", "-E", "lazy_itable_init=0,nodiscard", image.toString());
    Files.createDirectories(at);
    SmallDisk disk = new SmallDisk(under.memory, at);
    disk.mountImage();
    return disk;
  }

  private void mountImage() throws IOException {
    String image = memory.resolve("image").toString();
    run("mount", "-o", "loop,errors=remount-ro", image, disk.toString());
  }

  Path folder() {
    return disk;
  }

  private Path filler() {
    return memory.resolve("filler");
  }

  /** Uses up all that the memory has. */
  void fill() throws IOException {
    byte[] block = new byte[4096];
    try (OutputStream out = Files.newOutputStream(filler())) {
      while (true) {
        out.write(block);
      }
    } catch (IOException full) {
      // That it is full was the aim.
    }
  }

  /**
   * Tells the ext4 disk of an error in its own books, upon which it turns read-only under whoever
   * has files open there (the kernel's documentation of ext4, {@code trigger_fs_error}).
   */
  void turnReadOnly() throws IOException {
    Path books = Path.of("/sys/fs/ext4").resolve(Files.getFileStore(disk).name().substring(5));
    Files.writeString(books.resolve("trigger_fs_error"), "1");
  }

  /** Gives the room back. */
  void empty() throws IOException {
    Files.deleteIfExists(filler());
  }

  /** Puts the disk in again, as after a restart. */
  void mountAgain() throws IOException {
    run("umount", disk.toString());
    mountImage();
  }

  @Override
  public void close() throws IOException {
    if (!disk.equals(memory)) {
      run("umount", "-l", disk.toString());
    }
    run("umount", "-l", memory.toString());
  }

  private static void run(String... words) throws IOException {
    Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    // Its output has ended, and so has it.
    if (process.onExit().join().exitValue() != 0) {
      throw new IOException(String.join(" ", words) + ": " + said);
    }
  }
}
