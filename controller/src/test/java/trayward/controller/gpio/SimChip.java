package trayward.controller.gpio;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The kernel's simulated chip as seen from outside: what drives its inputs and lights its lamps.
 */
final class SimChip {

  private static final Path PLATFORM = Path.of("/sys/devices/platform");

  private final Path lines;

  private SimChip(Path lines) {
    this.lines = lines;
  }

  static SimChip find() throws IOException {
    try (DirectoryStream<Path> devices = Files.newDirectoryStream(PLATFORM, "gpio-sim.*")) {
      for (Path device : devices) {
        try (DirectoryStream<Path> chips = Files.newDirectoryStream(device, "gpiochip*")) {
          for (Path chip : chips) {
            if (Files.isDirectory(chip.resolve("sim_gpio0"))) {
              return new SimChip(chip);
            }
          }
        }
      }
    }
    throw new IOException("there is no simulated chip");
  }

  private Path file(PiLine function, String name) {
    return lines.resolve("sim_gpio" + function.standard().line()).resolve(name);
  }

  /** The level of a line now: 0 or 1. */
  String value(PiLine function) throws IOException {
    return Files.readString(file(function, "value")).trim();
  }

  boolean high(PiLine function) throws IOException {
    return value(function).equals("1");
  }

  /** Which way a line is pulled: pull-up or pull-down. */
  String pull(PiLine function) throws IOException {
    return Files.readString(file(function, "pull")).trim();
  }

  /** Closes a contact to ground, or opens it. */
  void contact(PiLine function, boolean closed) throws IOException {
    Files.writeString(file(function, "pull"), closed ? "pull-down" : "pull-up");
  }
}
