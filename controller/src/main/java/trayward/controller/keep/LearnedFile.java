package trayward.controller.keep;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.controller.port.WallClock;

/**
 * Learned trays in one small file, replaced whole. It may block; never called from the scan thread.
 * One thread at a time.
 */
public final class LearnedFile {

  private static final Logger LOG = LoggerFactory.getLogger(LearnedFile.class);

  /** More trays than a darkroom has; the file stays small. */
  public static final int MAX_TRAYS = 32;

  /** A tray's line is under 300 bytes, names of four-byte letters included. */
  private static final int MAX_BYTES = 16_384;

  private static final long DAY_S = 24 * 3600;

  private final Path file;
  private final WallClock clock;
  private final boolean readable;
  private Map<String, LearnedTray> trays;

  /**
   * Opens the record.
   *
   * @param file the record, whose folder must exist
   * @param clock for the dates, which are for the record only (SR-22)
   */
  public LearnedFile(Path file, WallClock clock) {
    this.file = file;
    this.clock = clock;
    LearnedLoad load = load();
    this.readable = load instanceof LearnedLoad.Loaded;
    this.trays = load instanceof LearnedLoad.Loaded loaded ? loaded.trays() : Map.of();
  }

  /** False where what is on the disk could not be believed: nothing counts as learned. */
  public boolean readable() {
    return readable;
  }

  /** What is on record, by name of the tray. */
  public Map<String, LearnedTray> trays() {
    return trays;
  }

  /** Today, days since 1970. */
  public long today() {
    return Math.floorDiv(clock.epochSeconds(), DAY_S);
  }

  private LearnedLoad load() {
    try {
      if (Files.size(file) <= MAX_BYTES) {
        var read = LearnedText.read(Files.readString(file, StandardCharsets.UTF_8));
        if (read.isPresent()) {
          return new LearnedLoad.Loaded(read.get());
        }
      }
      return unreadable("it is not what was written");
    } catch (NoSuchFileException e) {
      return new LearnedLoad.Loaded(Map.of());
    } catch (IOException e) {
      return unreadable(e.toString());
    }
  }

  private LearnedLoad unreadable(String why) {
    LOG.error("{} cannot be read, nothing counts as learned: {}", file, why);
    return new LearnedLoad.Unreadable(why);
  }

  /** Makes it durable; why that failed in words, empty where it did not. */
  public String save(LearnedTray tray) {
    Map<String, LearnedTray> next = new java.util.HashMap<>(trays);
    next.put(tray.name(), tray);
    if (next.size() > MAX_TRAYS) {
      return "there are " + MAX_TRAYS + " trays on record already";
    }
    try {
      WholeFile.replace(file, LearnedText.write(next));
      trays = Map.copyOf(next);
      return "";
    } catch (IOException e) {
      LOG.error("{} cannot be written: {}", file, e.toString());
      return "the record of learned trays cannot be written";
    }
  }
}
