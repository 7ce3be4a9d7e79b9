package trayward.controller.onewire;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Writes to a master's {@code therm_bulk_read}; a seam for tests. Probe thread only. */
@FunctionalInterface
interface Trigger {

  /** Exactly these eight bytes: the driver takes no other count, and tells nobody. */
  String WORD = "trigger\n";

  /** Begins a conversion in all probes of a bus and returns when it is over. */
  void write(Path file) throws IOException;

  /** The kernel's file; never makes one. */
  static void toFile(Path file) throws IOException {
    try (var channel = Files.newByteChannel(file, StandardOpenOption.WRITE)) {
      ByteBuffer word = ByteBuffer.wrap(WORD.getBytes(StandardCharsets.US_ASCII));
      if (channel.write(word) != WORD.length()) {
        throw new IOException(file + " took only a part");
      }
    }
  }
}
