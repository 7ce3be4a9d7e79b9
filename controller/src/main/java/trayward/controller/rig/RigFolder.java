package trayward.controller.rig;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import trayward.controller.port.OutputLine;
import trayward.controller.port.OutputLines;

/**
 * The folder in which each line is a small file holding a number and a newline. Files are replaced
 * whole, so that nobody reads half a number. Scan thread only.
 */
public final class RigFolder {

  /** Longest line file read, bytes: a number with every digit a double has fits. */
  private static final int MAX_BYTES = 64;

  private final Path folder;

  /** Uses {@code folder}, which must exist. */
  public RigFolder(Path folder) {
    this.folder = folder;
  }

  /** The number in a line's file; NaN where the file is missing or holds no number. */
  double number(String line) {
    try {
      byte[] bytes;
      try (var in = Files.newInputStream(folder.resolve(line))) {
        bytes = in.readNBytes(MAX_BYTES);
      }
      return Double.parseDouble(new String(bytes, StandardCharsets.US_ASCII).trim());
    } catch (IOException | NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** Whether a line's file holds 1; a missing file reads as 0. */
  boolean on(String line) {
    return number(line) >= 0.5;
  }

  private void write(String line, boolean on) {
    Path beside = folder.resolve("." + line + ".new");
    try {
      Files.writeString(beside, on ? "1\n" : "0\n", StandardCharsets.US_ASCII);
      Files.move(
          beside,
          folder.resolve(line),
          StandardCopyOption.REPLACE_EXISTING,
          StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new UncheckedIOException("the rig's line " + line + " cannot be written", e);
    }
  }

  /** The controller's output lines as files. Each is written at once as 0. */
  public OutputLines outputs() {
    return new OutputLines(
        line("heater_relay"),
        line("safety_relay"),
        line("watchdog_line"),
        line("fan"),
        line("buzzer"),
        line("lamp"));
  }

  private OutputLine line(String name) {
    write(name, false);
    return new OutputLine() {
      private boolean now;

      @Override
      public void write(boolean active) {
        if (active != now) {
          RigFolder.this.write(name, active);
          now = active;
        }
      }
    };
  }
}
