package trayward.host.report.card;

import java.io.IOException;
import java.util.Locale;
import trayward.host.session.Mark;
import trayward.host.session.TraceSample;

/** The bath's temperature around a print, drawn on a card. Stateless. */
final class CardPlot {

  private static final float SMALL = 6;
  private static final float LEFT = 22;
  private static final float BELOW = 10;
  private static final float ABOVE = 9;

  /** Samples further apart are not joined, seconds. */
  private static final double GAP_S = 10;

  private CardPlot() {}

  /** Draws it into a box whose lower left corner is given, points. */
  static void draw(CardPage page, CardFacts facts, float x, float y, float width, float height)
      throws IOException {
    PlotScale scale = facts.scale();
    float left = x + LEFT;
    float low = y + BELOW;
    float w = width - LEFT;
    float h = height - BELOW - ABOVE;
    for (double c : scale.linesC()) {
      float at = low + h * (float) scale.y(c);
      page.path(0.3f, 0.8f, new float[] {left, at, left + w, at});
      page.right(plain(c), left - 3, at - 2, SMALL, LEFT);
    }
    page.right("°C", left - 3, low + h + 3, SMALL, LEFT);
    for (double s : scale.linesS(facts.inS())) {
      float at = left + w * (float) scale.x(s);
      page.path(0.3f, 0.8f, new float[] {at, low, at, low + h});
      page.right(clock(s - facts.inS()), Math.min(at + 8, left + w), y + 2, SMALL, 30);
    }
    curve(page, facts, scale, new float[] {left, low, w, h});
    for (Mark mark : facts.print().marks()) {
      float at = left + w * (float) scale.x(mark.sessionS());
      page.path(0.8f, 0f, new float[] {at, low, at, low + h});
      String word = mark.kind().word();
      page.line(word, Math.min(at + 1.5f, left + w - 32), low + h + 2.5f, SMALL, true);
    }
    page.path(0.5f, 0f, new float[] {left, low + h, left, low, left + w, low});
    if (facts.trace().isEmpty()) {
      page.line("no temperatures recorded", left + 6, low + h / 2, SMALL + 1, false);
    }
  }

  private static void curve(CardPage page, CardFacts facts, PlotScale scale, float[] box)
      throws IOException {
    float[] points = new float[2 * facts.trace().size()];
    int n = 0;
    double lastS = Double.NEGATIVE_INFINITY;
    for (TraceSample sample : facts.trace()) {
      boolean gap = sample.sessionS() - lastS > GAP_S;
      if (!sample.bathValid() || gap) {
        page.path(0.9f, 0.25f, java.util.Arrays.copyOf(points, n));
        n = 0;
      }
      if (sample.bathValid()) {
        points[n++] = box[0] + box[2] * (float) scale.x(sample.sessionS());
        points[n++] = box[1] + box[3] * (float) scale.y(sample.bathC());
        lastS = sample.sessionS();
      }
    }
    page.path(0.9f, 0.25f, java.util.Arrays.copyOf(points, n));
  }

  static String plain(double c) {
    return String.format(Locale.ROOT, c == Math.rint(c) ? "%.0f" : "%.1f", c);
  }

  static String clock(double seconds) {
    long whole = Math.abs(Math.round(seconds));
    return String.format(Locale.ROOT, "%s%d:%02d", seconds < 0 ? "-" : "", whole / 60, whole % 60);
  }
}
