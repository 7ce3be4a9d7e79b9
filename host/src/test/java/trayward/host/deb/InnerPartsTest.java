package trayward.host.deb;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The table of parts in DEVELOPERS.md against what the build resolves for the jar. */
class InnerPartsTest {

  /** A row: group and artifact, whole or up to a {@code *}; version, licence, why. */
  private record Part(String name, String version, String licence, String why) {
    boolean covers(String artifact) {
      int star = name.indexOf('*');
      return star < 0 ? artifact.equals(name) : artifact.startsWith(name.substring(0, star));
    }
  }

  private static final Pattern ROW =
      Pattern.compile("\\| `([^`]+:[^`]*)` \\| ([^|]+) \\| ([^|]+) \\| ([^|]+) \\|");

  /** A line of the build's list: group, artifact, type, version, scope. */
  private static final Pattern RESOLVED =
      Pattern.compile("\\s+([\\w.-]+):([\\w.-]+):jar:([\\w.-]+):(?:compile|runtime).*");

  private static List<Part> table() throws IOException {
    return Files.readAllLines(Path.of("..", "DEVELOPERS.md")).stream()
        .map(ROW::matcher)
        .filter(Matcher::matches)
        .map(m -> new Part(m.group(1), m.group(2), m.group(3), m.group(4)))
        .toList();
  }

  private static List<Matcher> resolved() throws IOException {
    return Files.readAllLines(Path.of("target", "parts.txt")).stream()
        .map(RESOLVED::matcher)
        .filter(Matcher::matches)
        .filter(m -> !m.group(1).equals("trayward"))
        .toList();
  }

  @Test
  void everyPartInTheJarHasARowWithItsVersionALicenceAndAReason() throws IOException {
    List<Part> table = table();
    assertTrue(resolved().size() > 30, "the build's list has hardly anything in it");
    for (Matcher part : resolved()) {
      String name = part.group(1) + ":" + part.group(2);
      List<Part> rows = table.stream().filter(row -> row.covers(name)).toList();
      assertEquals(1, rows.size(), name + ": " + rows);
      assertEquals(part.group(3), rows.get(0).version(), name);
      assertFalse(rows.get(0).licence().isBlank() || rows.get(0).why().isBlank(), name);
    }
  }

  @Test
  void everyRowStandsForAPartInTheJar() throws IOException {
    Set<String> idle = new TreeSet<>();
    List<Matcher> resolved = resolved();
    for (Part row : table()) {
      if (resolved.stream().noneMatch(part -> row.covers(part.group(1) + ":" + part.group(2)))) {
        idle.add(row.name());
      }
    }
    assertEquals(Set.of(), idle);
  }
}
