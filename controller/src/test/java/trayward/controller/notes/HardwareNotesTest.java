package trayward.controller.notes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Drawings open anywhere, without the network; links lead somewhere; the warning is there. */
class HardwareNotesTest {

  private static final Path NOTES = Path.of("..", "hardware-notes");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
  private static final Set<String> ELEMENTS =
      Set.of(
          "title",
          "desc",
          "style",
          "g",
          "defs",
          "use",
          "rect",
          "line",
          "polyline",
          "polygon",
          "path",
          "circle",
          "text",
          "tspan");
  private static final Pattern HEADING = Pattern.compile("(?m)^#+ (.+)$");

  private static List<Path> files(Path folder, String ending) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(p -> p.toString().endsWith(ending)).sorted().toList();
    }
  }

  @Test
  void everyDrawingIsWellFormedHasATitleAndAsksForNothingFromOutside() throws Exception {
    List<Path> drawings = files(NOTES, ".svg");
    assertTrue(drawings.size() >= 8, drawings.toString());
    for (Path drawing : drawings) {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      DocumentBuilder builder = factory.newDocumentBuilder();
      Element top = builder.parse(drawing.toFile()).getDocumentElement();
      assertEquals("svg", top.getTagName(), drawing.toString());
      NodeList all = top.getElementsByTagName("*");
      for (int i = 0; i < all.getLength(); i++) {
        asksForNothing(drawing, (Element) all.item(i));
      }
    }
  }

  private static void asksForNothing(Path drawing, Element element) {
    String where = drawing + ": " + element.getTagName();
    assertTrue(ELEMENTS.contains(element.getTagName()), where);
    if (element.getTagName().equals("style")) {
      String style = element.getTextContent().toLowerCase(Locale.ROOT);
      assertTrue(!style.contains("url(") && !style.contains("@import"), where);
    }
    for (int i = 0; i < element.getAttributes().getLength(); i++) {
      Node attribute = element.getAttributes().item(i);
      String value = attribute.getNodeValue();
      assertTrue(!attribute.getNodeName().startsWith("on"), where);
      assertTrue(!attribute.getNodeName().endsWith("href") || value.startsWith("#"), where);
      assertTrue(!value.contains("url(") || value.contains("url(#"), where);
    }
  }

  @Test
  void everyRelativeLinkOfTheNotesAndTheReadmesLeadsToAFileAndAHeadingThatAreThere()
      throws Exception {
    List<Path> notes = new ArrayList<>(files(NOTES, ".md"));
    notes.add(Path.of("..", "README.md"));
    notes.add(Path.of("..", "DEVELOPERS.md"));
    int links = 0;
    List<String> broken = new ArrayList<>();
    for (Path note : notes) {
      Matcher link = LINK.matcher(Files.readString(note));
      while (link.find()) {
        if (!link.group(1).contains("://")) {
          links++;
          if (!leadsSomewhere(note, link.group(1))) {
            broken.add(note + ": " + link.group(1));
          }
        }
      }
    }
    assertEquals(List.of(), broken);
    assertTrue(links > 40, "links found: " + links);
  }

  private static boolean leadsSomewhere(Path note, String link) throws IOException {
    int hash = link.indexOf('#');
    String file = hash < 0 ? link : link.substring(0, hash);
    Path target = file.isEmpty() ? note : note.resolveSibling(file);
    return Files.exists(target) && (hash < 0 || anchors(target).contains(link.substring(hash + 1)));
  }

  /** Anchors as the common renderings of headings make them. */
  private static List<String> anchors(Path note) throws IOException {
    return HEADING
        .matcher(Files.readString(note))
        .results()
        .map(
            m ->
                m.group(1)
                    .toLowerCase(Locale.ROOT)
                    .replaceAll("[^\\p{L}\\p{N} _-]", "")
                    .replace(' ', '-'))
        .toList();
  }

  @Test
  void everyNoteOnWiringLeavesMainsToALicensedPerson() throws Exception {
    for (String name :
        List.of(
            "README.md",
            "wiring.md",
            "pulse-held-relay.md",
            "parts.md",
            "commissioning.md",
            "maintenance.md",
            "hazards.md")) {
      String text = Files.readString(NOTES.resolve(name)).replaceAll("\\s+", " ");
      assertTrue(text.matches("(?i).*mains.*"), name);
      assertTrue(text.matches("(?i).*licensed.*"), name);
      assertTrue(text.matches("(?i).*local codes.*"), name);
    }
    for (String name : List.of("overview", "relay-driver", "pulse-held-relay")) {
      String text = Files.readString(NOTES.resolve(name + ".svg"));
      assertTrue(text.toLowerCase(Locale.ROOT).contains("licensed person, local codes"), name);
    }
  }
}
