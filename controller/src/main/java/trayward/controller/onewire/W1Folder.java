package trayward.controller.onewire;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import trayward.controller.port.RawReading;

/** The kernel's folder of probes, as files. Stateless. */
final class W1Folder {

  /** Longest file taken for a probe's, bytes; the kernel's has under 100. */
  private static final int MAX_BYTES = 512;

  /** More probes than this are on no bus that works. */
  private static final int MOST_PROBES = 64;

  private W1Folder() {}

  /** Names of the thermometers' folders, in order; empty where there is no such folder. */
  static List<String> probes(Path root) {
    List<String> names = new ArrayList<>();
    try (DirectoryStream<Path> all = Files.newDirectoryStream(root, "28-*")) {
      for (Path each : all) {
        String name = String.valueOf(each.getFileName());
        if (names.size() < MOST_PROBES && RomId.ofFolder(name).isPresent()) {
          names.add(name);
        }
      }
    } catch (IOException | RuntimeException e) {
      names.clear();
    }
    Collections.sort(names);
    return names;
  }

  /** One read of a probe, which waits for its conversion where none was triggered before. */
  static RawReading read(Path root, String name, long takenNanos) {
    try (var in = Files.newInputStream(root.resolve(name).resolve("w1_slave"))) {
      byte[] bytes = in.readNBytes(MAX_BYTES + 1);
      if (bytes.length > MAX_BYTES) {
        return RawReading.failed(RawReading.Kind.ABSENT, takenNanos);
      }
      return W1Slave.parse(new String(bytes, StandardCharsets.US_ASCII), takenNanos);
    } catch (IOException | RuntimeException e) {
      // A vanished folder, a bus error, anything: no reading is a value, and the thread goes on.
      return RawReading.failed(RawReading.Kind.ABSENT, takenNanos);
    }
  }
}
