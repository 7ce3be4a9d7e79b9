package trayward.controller.app;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads a TOML file whole. Stateless. */
final class TomlText {

  /** A file of settings or a scenario larger than this is a mistake, bytes. */
  private static final long MAX_BYTES = 1 << 20;

  private TomlText() {}

  /** The file's top table. */
  static Section read(Path file) throws ConfigRefused {
    return parse(file.toString(), text(file));
  }

  /** The file's text. */
  static String text(Path file) throws ConfigRefused {
    try {
      if (Files.size(file) > MAX_BYTES) {
        throw new ConfigRefused(file + ": is larger than 1 MiB, accepted is a short TOML file");
      }
      return Files.readString(file);
    } catch (CharacterCodingException e) {
      throw new ConfigRefused(file + ": is not UTF-8 text, accepted is a TOML file");
    } catch (IOException e) {
      throw new ConfigRefused(file + ": cannot be read, accepted is a readable TOML file");
    }
  }

  static Section parse(String file, String text) throws ConfigRefused {
    try {
      JsonNode node = new TomlMapper().readTree(text);
      return new Section(file, "", (ObjectNode) node, true);
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      String line = at == null ? "" : "line " + at.getLineNr() + ": ";
      String why = e.getOriginalMessage().lines().findFirst().orElse("").trim();
      throw new ConfigRefused(file + ": " + line + "is not TOML (" + why + ")");
    }
  }
}
