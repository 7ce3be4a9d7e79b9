package trayward.host;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** What a program wrote into a folder, byte for byte, for tests. */
public final class WrittenFiles {

  private WrittenFiles() {}

  /** Relative paths of all files below, with what is in them: a character for each byte. */
  public static Map<String, String> of(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
        files.put(folder.relativize(file).toString(), bytes);
      }
    }
    return files;
  }
}
