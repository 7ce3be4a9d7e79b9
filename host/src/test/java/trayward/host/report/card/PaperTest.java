package trayward.host.report.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.bath.BookEntry;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.Print;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;
import trayward.host.store.BathBook;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;

/** Card and sheet, read back. */
class PaperTest {

  private static final Instant EVENING = Instant.parse("2031-03-01T20:00:00Z");
  private static final String SCRIPT = "<script>alert('x')</script>";

  @TempDir private Path folder;
  private TrayLog log;
  private Session session;

  @BeforeEach
  void open() throws Exception {
    log = LogFile.open(folder);
    session = log.startSession(EVENING, true);
    log.baths()
        .make(
            new BathBook.Now(EVENING, 0),
            "Bath " + SCRIPT,
            0,
            "",
            List.of(BookEntry.poured(0, 0, EVENING, 0, "water", 1000)));
    List<TraceSample> samples = new ArrayList<>();
    for (int s = 0; s < 700; s++) {
      samples.add(new TraceSample(s, 38 + 0.2 * Math.sin(s / 40.0), 46, 38, 0.4, "HOLDING", true));
    }
    log.addTrace(session.id(), samples);
    Map<MarkKind, Double> at =
        Map.of(MarkKind.IN, 100.0, MarkKind.EMERGENCE, 262.0, MarkKind.PULL, 391.0);
    for (MarkKind kind : MarkKind.values()) {
      double s = at.getOrDefault(kind, 0.0);
      log.mark(
          kind,
          session.id(),
          new Moment(s, EVENING.plusSeconds((long) s)),
          "pedal",
          OptionalDouble.of(38));
    }
  }

  @AfterEach
  void close() {
    log.close();
  }

  private void say(Map<String, String> said) {
    assertTrue(
        log.record().change(1, said, EVENING) instanceof trayward.host.store.PrintUpdate.Updated);
  }

  private Print print() {
    return log.print(1).orElseThrow();
  }

  /** The text of a card, with every letter inside the page. */
  private String read(byte[] pdf) throws Exception {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertEquals(1, document.getNumberOfPages());
      float width = document.getPage(0).getMediaBox().getWidth();
      float height = document.getPage(0).getMediaBox().getHeight();
      PDFTextStripper stripper =
          new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition letter) {
              assertTrue(letter.getX() >= 20, letter::toString);
              assertTrue(letter.getX() + letter.getWidth() <= width - 20, letter::toString);
              assertTrue(letter.getY() - letter.getHeight() >= 20, letter::toString);
              assertTrue(letter.getY() <= height - 20, letter::toString);
              super.processTextPosition(letter);
            }
          };
      return stripper.getText(document).replaceAll("\\s+", " ");
    }
  }

  @Test
  void aCardIsOnePageThatTellsWhatThePrintWas() throws Exception {
    say(
        Map.of(
            "title", "Łódź, the weir",
            "negative", "N-7",
            "base_exposure_s", "20",
            "stops_over", "2.5",
            "width_mm", "203",
            "height_mm", "254",
            "verdict_wet", "good blacks"));
    log.record().addStep(1, "fix", "60", "1+4", "rapid", EVENING);
    String text = read(PrintCard.pdf(log, print()));
    for (String part :
        List.of(
            "Łódź, the weir",
            "print 1",
            "2031-03-01 20:01 UTC",
            "203 x 254 mm",
            // 2 to the 2.5 is 5.657, by hand
            "20 s + 2.5 stops = x 5.66 = 113.1 s",
            "emergence 2:42",
            "pull 4:51",
            "fix 60 s 1+4 rapid",
            "good blacks",
            "sulfur dioxide")) {
      assertTrue(text.contains(part), part + " in " + text);
    }
    assertFalse(text.contains("INVENTED"), text);
    assertFalse(text.contains("font lacks"), text);
  }

  @Test
  void textsOfFullLengthStayInTheirBoxesAndEndInAnEllipsis() throws Exception {
    Map<String, String> said = new TreeMap<>();
    for (var field : trayward.host.session.PrintField.values()) {
      if (!field.number()) {
        said.put(field.word(), "W".repeat((int) field.rule().most()));
      }
    }
    said.put("title", "many words ".repeat(18).strip());
    said.put("notes", "x\n".repeat(900));
    say(said);
    for (String kind : List.of("stop", "fix", "bleach", "tone")) {
      log.record().addStep(1, kind, "60", "1+4", "w".repeat(200), EVENING);
    }
    String text = read(PrintCard.pdf(log, print()));
    assertTrue(text.contains("…"), text);
    assertTrue(text.contains("leave and air the room."), "no caution is cut: " + text);
  }

  @Test
  void aCharacterTheFontLacksIsAQuestionMarkAndTheCardSaysSo() throws Exception {
    say(Map.of("title", "暗室 \uD83D\uDCF7 and more"));
    String text = read(PrintCard.pdf(log, print()));
    assertTrue(text.contains("?? ? and more"), text);
    assertTrue(text.contains("font lacks"), text);
  }

  @Test
  void theFirstPictureAndTheTraceAreOnThePage() throws Exception {
    BufferedImage plain = new BufferedImage(60, 80, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < 60 * 80; i++) {
      plain.setRGB(i % 60, i / 60, Color.BLUE.getRGB());
    }
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(plain, "png", png);
    log.pictures().add(1, new ByteArrayInputStream(png.toByteArray()), EVENING);
    try (PDDocument document = Loader.loadPDF(PrintCard.pdf(log, print()))) {
      BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, 72);
      int blue = 0;
      int grey = 0;
      for (int i = 0; i < page.getWidth() * page.getHeight(); i++) {
        Color c = new Color(page.getRGB(i % page.getWidth(), i / page.getWidth()));
        blue += c.getBlue() > c.getRed() + 100 ? 1 : 0;
        grey += c.getRed() < 160 && c.getBlue() < 160 ? 1 : 0;
      }
      assertTrue(blue > 5000, blue + " blue of the picture");
      assertTrue(grey > 1000, grey + " dark of letters and lines");
    }
  }

  @Test
  void aSheetHoldsTheSessionAndAScriptInANameStaysText() throws Exception {
    say(Map.of("title", SCRIPT, "paper", "\"><img src=x onerror=alert(1)>"));
    log.record().setSymptoms(session.id(), "a & b " + SCRIPT, EVENING);
    log.endSession(session.id(), EVENING.plusSeconds(800), "off");
    String html = SessionSheet.html(log, log.session(session.id()).orElseThrow());
    assertFalse(html.contains("<script"), html);
    assertFalse(html.contains("<img"), html);
    assertTrue(html.contains("&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;"), html);
    assertTrue(html.contains("a &amp; b"), html);
    assertTrue(html.contains("<td>2:42</td><td>4:51</td>"), html);
    assertTrue(html.contains("water 1000 mL"), html);
    assertTrue(html.contains("class=\"bath\" d=\"M"), html);
    assertFalse(html.contains("http://") || html.contains("https://"), "nothing from elsewhere");
  }
}
