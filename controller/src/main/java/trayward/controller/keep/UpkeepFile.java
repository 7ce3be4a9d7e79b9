package trayward.controller.keep;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The upkeep in one small file, replaced whole: written beside it, forced to the disk, renamed
 * over. It may block; never called from the scan thread. One thread at a time.
 */
final class UpkeepFile {

  private static final Logger LOG = LoggerFactory.getLogger(UpkeepFile.class);

  /** A real one is under 300 bytes, so anything larger is not ours. */
  private static final int MAX_BYTES = 4096;

  private final Path file;

  UpkeepFile(Path file) {
    this.file = file;
  }

  /** What is on record; counted from {@code today} on a first run; all due where unreadable. */
  Upkeep load(long today) {
    try {
      if (Files.size(file) <= MAX_BYTES) {
        var read = UpkeepText.read(Files.readString(file, StandardCharsets.UTF_8));
        if (read.isPresent()) {
          return read.get();
        }
      }
      LOG.error("{} is no record of upkeep: everything counts as due", file);
      return Upkeep.unknown();
    } catch (NoSuchFileException e) {
      Upkeep first = Upkeep.installed(today);
      return save(first) ? first : Upkeep.unknown();
    } catch (IOException e) {
      LOG.error("{} cannot be read, everything counts as due: {}", file, e.toString());
      return Upkeep.unknown();
    }
  }

  /** Makes it durable; false where that failed. */
  boolean save(Upkeep upkeep) {
    try {
      WholeFile.replace(file, UpkeepText.write(upkeep));
      return true;
    } catch (IOException e) {
      LOG.error("{} cannot be written: {}", file, e.toString());
      return false;
    }
  }
}
