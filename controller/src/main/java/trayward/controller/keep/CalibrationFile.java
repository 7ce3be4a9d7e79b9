package trayward.controller.keep;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The calibrations in one small file, replaced whole. It may block; never called from the scan
 * thread. One thread at a time.
 */
final class CalibrationFile {

  private static final Logger LOG = LoggerFactory.getLogger(CalibrationFile.class);

  /** Six points of under 120 bytes at most, so anything larger is not ours. */
  private static final int MAX_BYTES = 4096;

  private final Path file;

  CalibrationFile(Path file) {
    this.file = file;
  }

  CalibrationLoad load() {
    try {
      if (Files.size(file) <= MAX_BYTES) {
        var read = CalibrationText.read(Files.readString(file, StandardCharsets.UTF_8));
        if (read.isPresent()) {
          return new CalibrationLoad.Loaded(read.get());
        }
      }
      return unreadable("it is not what was written");
    } catch (NoSuchFileException e) {
      return new CalibrationLoad.Loaded(CalibrationBook.EMPTY);
    } catch (IOException e) {
      return unreadable(e.toString());
    }
  }

  private CalibrationLoad unreadable(String why) {
    LOG.error("{} cannot be read, no probe is corrected: {}", file, why);
    return new CalibrationLoad.Unreadable(why);
  }

  /** Makes it durable; false where that failed. */
  boolean save(CalibrationBook book) {
    try {
      WholeFile.replace(file, CalibrationText.write(book));
      return true;
    } catch (IOException e) {
      LOG.error("{} cannot be written: {}", file, e.toString());
      return false;
    }
  }
}
