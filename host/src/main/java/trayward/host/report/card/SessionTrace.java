package trayward.host.report.card;

import java.util.List;
import java.util.Locale;
import trayward.host.session.Print;
import trayward.host.session.TraceSample;

/** A session's bath temperature as a drawing in HTML, its prints marked. Stateless. */
final class SessionTrace {

  private static final int WIDTH = 1000;
  private static final int HEIGHT = 260;
  private static final int LEFT = 44;
  private static final int BELOW = 24;
  private static final int ABOVE = 20;

  /** Points of a curve: more than a printer's dots across the paper would show nothing. */
  private static final int POINTS_MAX = 2000;

  /** Samples further apart than this times the usual distance are not joined. */
  private static final double GAP_S = 10;

  private SessionTrace() {}

  static void svg(StringBuilder out, List<TraceSample> samples, List<Print> prints) {
    if (samples.isEmpty()) {
      out.append("<p>No temperatures were recorded.</p>\n");
      return;
    }
    double fromS = samples.get(0).sessionS();
    PlotScale scale = PlotScale.of(samples, fromS, samples.get(samples.size() - 1).sessionS());
    out.append("<svg viewBox=\"0 0 ").append(WIDTH).append(' ').append(HEIGHT);
    out.append("\" role=\"img\" aria-label=\"bath temperature over the session\">\n");
    for (double c : scale.linesC()) {
      line(out, "grid", LEFT, y(scale, c), WIDTH, y(scale, c));
      text(out, LEFT - 6, y(scale, c) + 4, "end", CardPlot.plain(c));
    }
    text(out, LEFT - 6, ABOVE - 6, "end", "°C");
    for (double s : scale.linesS(0)) {
      line(out, "grid", x(scale, s), ABOVE, x(scale, s), HEIGHT - BELOW);
      text(out, Math.min(x(scale, s), WIDTH - 24), HEIGHT - 8, "middle", minutes(s));
    }
    for (Print print : prints) {
      double inX = x(scale, SessionSheet.inS(print));
      double endX = x(scale, print.endS().orElse(scale.toS()));
      out.append(
          String.format(
              Locale.ROOT,
              "<rect class=\"print\" x=\"%.1f\" y=\"%d\" width=\"%.1f\" height=\"%d\"/>\n",
              inX,
              ABOVE,
              Math.max(1, endX - inX),
              HEIGHT - BELOW - ABOVE));
      text(out, (inX + endX) / 2, ABOVE - 6, "middle", Long.toString(print.number()));
      print
          .emergenceAt()
          .ifPresent(
              e -> {
                double at = x(scale, e.sessionS());
                line(out, "emergence", at, ABOVE, at, HEIGHT - BELOW);
              });
    }
    curve(out, scale, samples);
    out.append("</svg>\n<p class=\"small\">Minutes of the session. Shaded: a print from in to");
    out.append(" pull, with its number; the line in it is the emergence.</p>\n");
  }

  private static void curve(StringBuilder out, PlotScale scale, List<TraceSample> samples) {
    int every = 1 + samples.size() / POINTS_MAX;
    StringBuilder path = new StringBuilder();
    double lastS = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < samples.size(); i += every) {
      TraceSample sample = samples.get(i);
      if (sample.bathValid()) {
        boolean joined = sample.sessionS() - lastS <= GAP_S * every;
        path.append(
            String.format(
                Locale.ROOT,
                "%s%.1f %.1f",
                joined ? "L" : "M",
                x(scale, sample.sessionS()),
                y(scale, sample.bathC())));
        lastS = sample.sessionS();
      }
    }
    out.append("<path class=\"bath\" d=\"").append(path).append("\"/>\n");
  }

  private static String minutes(double s) {
    return String.format(Locale.ROOT, "%.0f", s / 60);
  }

  private static double x(PlotScale scale, double s) {
    return LEFT + (WIDTH - LEFT) * scale.x(s);
  }

  private static double y(PlotScale scale, double c) {
    return HEIGHT - BELOW - (HEIGHT - BELOW - ABOVE) * scale.y(c);
  }

  private static void line(
      StringBuilder out, String kind, double x1, double y1, double x2, double y2) {
    out.append(
        String.format(
            Locale.ROOT,
            "<line class=\"%s\" x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\"/>\n",
            kind,
            x1,
            y1,
            x2,
            y2));
  }

  private static void text(StringBuilder out, double x, double y, String anchor, String words) {
    out.append(
        String.format(
            Locale.ROOT,
            "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>\n",
            x,
            y,
            anchor,
            SessionSheet.escaped(words)));
  }
}
