package trayward.host.report.card;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/**
 * One page to write and draw on, in points from its lower left corner. Text never leaves its width:
 * it is wrapped, and what is too much ends in an ellipsis. A character that the font lacks becomes
 * a question mark, and {@link #lacking} says so. One thread.
 */
final class CardPage implements AutoCloseable {

  /**
   * The library brings this font, under the SIL Open Font License; the file embeds a part of it.
   */
  private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

  private static final String MORE = "…";

  /** Thickness that makes plain letters bold, as a share of their size. */
  private static final float BOLD = 0.035f;

  private final PDPageContentStream out;
  private final PDFont font;
  private final Map<Integer, Float> widths = new HashMap<>();
  private boolean lacking;

  CardPage(PDDocument document, PDRectangle size) throws IOException {
    PDPage page = new PDPage(size);
    document.addPage(page);
    try (InputStream file = PDType0Font.class.getResourceAsStream(FONT)) {
      if (file == null) {
        throw new IOException("the font is missing from the archive");
      }
      font = PDType0Font.load(document, file, true);
    }
    out = new PDPageContentStream(document, page);
  }

  /** Whether a character had to become a question mark. */
  boolean lacking() {
    return lacking;
  }

  /** Width of a character at size 1; below 0 where the font lacks it. */
  private float width(int character) {
    return widths.computeIfAbsent(
        character,
        c -> {
          try {
            return font.getStringWidth(Character.toString(c)) / 1000;
          } catch (IOException | IllegalArgumentException e) {
            return -1f;
          }
        });
  }

  /** Text as the font can show it: every gap one blank, what is lacking a question mark. */
  private String shown(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              if (Character.isWhitespace(c) || Character.isISOControl(c)) {
                shown.append(' ');
              } else if (width(c) < 0) {
                lacking = true;
                shown.append('?');
              } else {
                shown.appendCodePoint(c);
              }
            });
    return shown.toString().strip().replaceAll(" {2,}", " ");
  }

  private float width(String text, float size) {
    float sum = 0;
    for (int c : text.codePoints().toArray()) {
      sum += width(c) * size;
    }
    return sum;
  }

  /** Lines no wider than this; the last ends in an ellipsis where there is more. */
  List<String> wrap(String text, float size, float most, int lines) {
    List<String> wrapped = new ArrayList<>();
    String rest = shown(text);
    while (!rest.isEmpty() && wrapped.size() < lines) {
      int end = fitting(rest, size, most);
      if (end < rest.length() && wrapped.size() == lines - 1) {
        int cut = fitting(rest, size, most - width(MORE, size));
        wrapped.add(rest.substring(0, cut).strip() + MORE);
        return wrapped;
      }
      int blank = end < rest.length() ? rest.lastIndexOf(' ', end) : -1;
      int at = blank > 0 ? blank : end;
      wrapped.add(rest.substring(0, at).strip());
      rest = rest.substring(at).strip();
    }
    return wrapped;
  }

  /** How many chars of a text fit: one at least, or nothing would ever be written. */
  private int fitting(String text, float size, float most) {
    float sum = 0;
    int at = 0;
    while (at < text.length()) {
      int c = text.codePointAt(at);
      sum += width(c) * size;
      if (sum > most && at > 0) {
        return at;
      }
      at += Character.charCount(c);
    }
    return at;
  }

  /** Writes a line as {@link #wrap} gave it. */
  void line(String shown, float x, float y, float size, boolean bold) throws IOException {
    out.beginText();
    out.setFont(font, size);
    out.setRenderingMode(bold ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
    out.setLineWidth(bold ? BOLD * size : 0.5f);
    out.newLineAtOffset(x, y);
    out.showText(shown);
    out.endText();
  }

  /** Writes one line that ends at a place. */
  void right(String text, float x, float y, float size, float most) throws IOException {
    for (String line : wrap(text, size, most, 1)) {
      line(line, x - width(line, size), y, size, false);
    }
  }

  /** A path of straight lines: x and y in turn. */
  void path(float width, float grey, float[] points) throws IOException {
    if (points.length < 4) {
      return;
    }
    out.setLineWidth(width);
    out.setStrokingColor(grey);
    out.moveTo(points[0], points[1]);
    for (int i = 2; i + 1 < points.length; i += 2) {
      out.lineTo(points[i], points[i + 1]);
    }
    out.stroke();
    out.setStrokingColor(0f);
  }

  /** A picture as large as fits, in the upper right corner of a box. */
  void picture(PDImageXObject image, float right, float top, float most) throws IOException {
    float scale = most / Math.max(image.getWidth(), image.getHeight());
    float width = image.getWidth() * scale;
    float height = image.getHeight() * scale;
    out.drawImage(image, right - width, top - height, width, height);
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
