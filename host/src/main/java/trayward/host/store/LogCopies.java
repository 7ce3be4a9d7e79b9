package trayward.host.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import org.jdbi.v3.core.JdbiException;

/** Checks a log, and copies it beside a running program. Stateless. */
public final class LogCopies {

  private LogCopies() {}

  /**
   * What a check found.
   *
   * @param counts how much is in the log
   * @param findings what is wrong in it; empty for a healthy one
   */
  public record Checkup(LogCounts counts, List<LogFinding> findings) {}

  /**
   * Goes through a whole log as of one moment; writes nothing.
   *
   * @param model what its bath book reckons with
   * @throws LogRefused where there is no log or it cannot even be opened
   * @throws LogFailed where it is too damaged to be read
   */
  public static Checkup check(Path folder, BookModel model) throws LogRefused {
    try (LogReader log = LogFile.openToRead(folder)) {
      PictureFiles files = PictureFiles.of(log.file());
      return log.connection()
          .read(
              handle ->
                  new Checkup(CountRows.all(handle), LogVerify.findings(handle, files, model)));
    }
  }

  /**
   * Copies log and pictures as of one moment, also while a program writes; the copy gets its name
   * once it is whole and safe on the disk.
   *
   * @param to a folder that is not there yet
   * @return pictures of which there is no file, so that the copy lacks them too
   * @throws RowRefused where the folder is there
   */
  public static long copy(Path folder, Path to) throws LogRefused, IOException {
    Path target = to.toAbsolutePath();
    if (Files.exists(target)) {
      throw new RowRefused("--out: found " + to + ", accepted is a folder that is not there yet");
    }
    Files.createDirectories(target.resolveSibling("."));
    Path part = Files.createTempDirectory(target.resolveSibling("").toAbsolutePath(), "copy-");
    boolean done = false;
    try (LogReader log = LogFile.openToRead(folder)) {
      Path file = part.resolve(LogFile.NAME);
      log.connection()
          .raw(handle -> handle.execute("VACUUM INTO ?", file.toAbsolutePath().toString()));
      force(file);
      long missing = pictures(log, file);
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
      done = true;
      return missing;
    } catch (UncheckedIOException e) {
      throw e.getCause();
    } catch (JdbiException e) {
      throw new LogFailed(to + " could not be written: " + SqliteTrouble.words(e) + ".", e);
    } finally {
      if (!done) {
        remove(part);
      }
    }
  }

  /** Those the copy tells of: a picture is never removed, so each is there since. */
  private static long pictures(LogReader log, Path copy) throws LogRefused, IOException {
    PictureFiles from = PictureFiles.of(log.file());
    PictureFiles to = PictureFiles.of(copy);
    long[] missing = {0};
    try (LogReader copied = LogFile.openToRead(copy.resolveSibling(""))) {
      copied
          .whole()
          .each(
              LogTables.PICTURES,
              row -> {
                String name = row.text("file");
                missing[0] += copied(from.of(name, false), to.of(name, false)) ? 0 : 1;
                copied(from.of(name, true), to.of(name, true));
              });
    }
    return missing[0];
  }

  private static boolean copied(Path from, Path to) {
    try {
      if (!Files.isRegularFile(from)) {
        return false;
      }
      Files.createDirectories(to.resolveSibling(""));
      Files.copy(from, to, StandardCopyOption.REPLACE_EXISTING);
      force(to);
      return true;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}
