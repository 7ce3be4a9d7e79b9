package trayward.host.app.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import trayward.host.store.LogFile;
import trayward.host.store.LogReader;
import trayward.host.store.LogRefused;
import trayward.host.store.TrayLog;

/**
 * The folder of the invented season: never the person's. It is made whole beside its place and
 * moved there, so that a season broken off leaves no half of one. Stateless.
 */
public final class DemoFolder {

  /** Its name, beside the configured folder of the log. */
  public static final String NAME = "trayward-demo";

  private DemoFolder() {}

  /** What stands in its place is no invented season. */
  public static final class Taken extends Exception {
    private static final long serialVersionUID = 1L;

    Taken(String line) {
      super(line);
    }
  }

  /** Where it is, told the folder of the person's log. */
  public static Path beside(Path logFolder) {
    return logFolder.toAbsolutePath().resolveSibling(NAME);
  }

  /**
   * Makes the season where there is none, and uses again the one that is there.
   *
   * @return whether it was made now
   * @throws Taken where the folder holds something else; it is then as it was
   * @throws LogRefused where its log cannot be opened
   */
  public static boolean ready(Path folder) throws Taken, LogRefused, IOException {
    if (Files.exists(folder.resolve(LogFile.NAME))) {
      try (LogReader log = LogFile.openToRead(folder)) {
        if (!log.invented()) {
          throw new Taken(refusal(folder, "a log that is no invented season"));
        }
      }
      return false;
    }
    if (Files.exists(folder) && !empty(folder)) {
      throw new Taken(refusal(folder, "something else"));
    }
    make(folder);
    return true;
  }

  private static String refusal(Path folder, String found) {
    return folder
        + ": found "
        + found
        + ", accepted is the season of run --demo, an empty folder or none";
  }

  private static boolean empty(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }

  private static void make(Path folder) throws LogRefused, IOException {
    Path parent = folder.toAbsolutePath().getParent();
    Path part = Files.createTempDirectory(parent == null ? Path.of(".") : parent, NAME + "-part");
    boolean made = false;
    try {
      try (TrayLog log = LogFile.open(part)) {
        Season.write(log, Season.SEED);
      }
      Files.deleteIfExists(folder);
      Files.move(part, folder);
      made = true;
    } finally {
      if (!made) {
        remove(part);
      }
    }
  }

  /** Only what was made here a moment ago, and only one level deep. */
  private static void remove(Path part) throws IOException {
    List<Path> inside;
    try (Stream<Path> files = Files.list(part)) {
      inside = files.toList();
    }
    for (Path file : inside) {
      Files.deleteIfExists(file);
    }
    Files.deleteIfExists(part);
  }
}
