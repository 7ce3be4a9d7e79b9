package trayward.host.report.card;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import trayward.host.session.Print;
import trayward.host.session.PrintField;
import trayward.host.session.PrintStep;
import trayward.host.store.LogReader;

/**
 * A card of one print for a notebook: one page of A5 as a PDF. Every part has a most of lines, and
 * together they leave room for a hand. One thread.
 */
public final class PrintCard {

  /** A small picture is some kilobytes; a file beyond this is not one of ours, bytes. */
  private static final long PICTURE_MAX = 4L << 20;

  private static final float MARGIN = 26;
  private static final float TEXT = 7.5f;
  private static final float STEP = 9.6f;
  private static final float LABEL = 54;
  private static final float PLOT = 104;
  private static final float PICTURE = 96;
  private static final float RULED = 17;

  /** Room for the cautions at the foot, points. */
  private static final float FOOT = 70;

  private final CardPage page;
  private final CardFacts facts;
  private final float right = PDRectangle.A5.getWidth() - MARGIN;
  private float y = PDRectangle.A5.getHeight() - MARGIN;

  private PrintCard(CardPage page, CardFacts facts) {
    this.page = page;
    this.facts = facts;
  }

  /** The file's bytes. */
  public static byte[] pdf(LogReader log, Print print) throws IOException {
    CardFacts facts = CardFacts.of(log, print);
    try (PDDocument document = new PDDocument()) {
      document.getDocumentInformation().setTitle("print " + print.number());
      try (CardPage page = new CardPage(document, PDRectangle.A5)) {
        new PrintCard(page, facts).write(document);
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    }
  }

  private void write(PDDocument document) throws IOException {
    head();
    float top = y + 8;
    boolean pictured = picture(document, top);
    float most = right - (pictured ? PICTURE + 10 : 0);
    row("Negative", facts.said().of(PrintField.NEGATIVE), most, 2);
    row("Paper", facts.paper(), most, 2);
    row("Size", facts.size(), most, 1);
    row("Exposure", facts.exposure(), most, 2);
    row("Burns", facts.said().of(PrintField.BURNS), most, 1);
    row("Bath", facts.bathName(), most, 1);
    y = pictured ? Math.min(y, top - PICTURE - 8) : y;
    row("as made", facts.bathMade(), right, 3);
    row("as it was", facts.said().bath().map(BathWords::asItWas).orElse(""), right, 2);
    row("goes on in it", facts.lineage(), right, 1);
    y -= PLOT - 2;
    CardPlot.draw(page, facts, MARGIN, y, right - MARGIN, PLOT);
    y -= STEP;
    row("Times", facts.times(), right, 2);
    row("Held", facts.held(), right, 1);
    row(
        "Steps",
        facts.said().steps().stream().map(PrintStep::words).collect(Collectors.joining(";  ")),
        right,
        2);
    row("Wet", facts.said().of(PrintField.VERDICT_WET), right, 2);
    row("Dry", facts.said().of(PrintField.VERDICT_DRY), right, 2);
    row("Faults", facts.said().of(PrintField.FAULTS), right, 1);
    row("Notes", facts.print().notes(), right, 2);
    ruled();
    foot();
  }

  private void head() throws IOException {
    y -= 12;
    page.right("print " + facts.print().number(), right, y, 12, 90);
    for (String line : page.wrap(facts.title(), 12, right - MARGIN - 100, 2)) {
      page.line(line, MARGIN, y, 12, true);
      y -= 14;
    }
    String at = facts.print().startedWall().toString().substring(0, 16).replace('T', ' ');
    String invented = facts.invented() ? ";  INVENTED SEASON: this print was never made" : "";
    for (String line : page.wrap(at + " UTC" + invented, 8, right - MARGIN, 1)) {
      page.line(line, MARGIN, y, 8, facts.invented());
    }
    y -= 5;
    page.path(0.5f, 0f, new float[] {MARGIN, y, right, y});
    y -= 12;
  }

  /** Draws the first picture; gives whether there is one that can be read. */
  private boolean picture(PDDocument document, float top) throws IOException {
    Path file = facts.picture().orElse(null);
    if (file == null || !Files.isReadable(file) || Files.size(file) > PICTURE_MAX) {
      return false;
    }
    try {
      byte[] bytes = Files.readAllBytes(file);
      page.picture(
          PDImageXObject.createFromByteArray(document, bytes, "picture"), right, top, PICTURE);
      return true;
    } catch (IOException | IllegalArgumentException e) {
      // A picture that was harmed since is left out; the card is still one.
      return false;
    }
  }

  /** A label and what it says, over some lines at the most; nothing for nothing. */
  private void row(String label, String text, float most, int lines) throws IOException {
    List<String> wrapped = page.wrap(text, TEXT, most - MARGIN - LABEL, lines);
    for (int i = 0; i < wrapped.size(); i++) {
      if (i == 0) {
        page.line(label, MARGIN, y, TEXT, true);
      }
      page.line(wrapped.get(i), MARGIN + LABEL, y, TEXT, false);
      y -= STEP;
    }
  }

  /** Lines for a hand, down to the foot. */
  private void ruled() throws IOException {
    for (float at = y - RULED + STEP; at > MARGIN + FOOT; at -= RULED) {
      page.path(0.3f, 0.7f, new float[] {MARGIN, at, right, at});
    }
  }

  private void foot() throws IOException {
    String lacking = page.lacking() ? "? stands for a character that this card's font lacks. " : "";
    String cautions =
        "Hot developer gives off vapour and burns skin: extraction on, gloves, goggles. "
            + String.join(" ", facts.cautions());
    float at = MARGIN + FOOT - 10;
    page.path(0.5f, 0f, new float[] {MARGIN, at + 8, right, at + 8});
    for (String line : page.wrap(lacking + cautions, 5.6f, right - MARGIN, 8)) {
      page.line(line, MARGIN, at, 5.6f, false);
      at -= 7f;
    }
  }
}
