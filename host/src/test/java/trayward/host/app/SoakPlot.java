package trayward.host.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;

/**
 * Curves of a soak trial as one drawing: a panel under another, time to the right, each panel with
 * an axis from nothing to above its highest value. Stateless.
 */
final class SoakPlot {

  private static final int WIDTH = 900;
  private static final int LEFT = 60;
  private static final int RIGHT = 200;
  private static final int PANEL = 130;
  private static final int GAP = 55;
  private static final int TOP = 75;
  private static final int LEGEND_LINE = 18;

  /** Marks of an axis: as many as can be read apart. */
  private static final int MOST_MARKS = 8;

  /** Told apart by people who do not see red beside green too. */
  private static final List<String> COLOURS = List.of("#c00000", "#2060c0", "#e09020", "#666666");

  private SoakPlot() {}

  /** One curve: what it is called, its values, NaN where there is none. */
  record Curve(String name, List<Double> values) {}

  /** One panel: what is drawn, with its unit, and at the least how high the axis is. */
  record Panel(String title, double atLeast, List<Curve> curves) {}

  /** A panel of some columns of a table, each called by what {@code name} makes of its own. */
  static Panel panel(
      String title,
      double atLeast,
      SoakTable table,
      UnaryOperator<String> name,
      String... columns) {
    return new Panel(
        title,
        atLeast,
        Arrays.stream(columns)
            .map(c -> new Curve(name.apply(c), Arrays.stream(table.column(c)).boxed().toList()))
            .toList());
  }

  /** Writes the drawing; {@code at} is the time of each value, {@code timeTitle} its unit. */
  static void write(
      Path file, String title, String timeTitle, double[] at, double warmUp, List<Panel> panels)
      throws IOException {
    int height = TOP + panels.size() * (PANEL + GAP);
    StringBuilder out = new StringBuilder();
    add(out, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" ", WIDTH, height);
    add(out, "font-family=\"sans-serif\" font-size=\"13\">\n");
    add(out, "<rect width=\"%d\" height=\"%d\" fill=\"white\"/>\n", WIDTH, height);
    text(out, LEFT, 26, "start", title);
    for (int i = 0; i < panels.size(); i++) {
      panel(out, panels.get(i), TOP + i * (PANEL + GAP), at, warmUp);
    }
    text(out, WIDTH - RIGHT, height - 8, "end", timeTitle);
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.writeString(file, out.append("</svg>\n").toString());
  }

  private static void panel(StringBuilder out, Panel panel, int topY, double[] at, double warmUp) {
    double most = panel.atLeast();
    for (Curve curve : panel.curves()) {
      for (double value : curve.values()) {
        most = Double.isFinite(value) ? Math.max(most, value) : most;
      }
    }
    double lastAt = at[at.length - 1];
    text(out, LEFT, topY - 12, "start", panel.title());
    add(out, "<rect x=\"%d\" y=\"%d\" width=\"%.1f\" ", LEFT, topY, x(warmUp, lastAt) - LEFT);
    add(out, "height=\"%d\" fill=\"#f2f2f2\"/>\n", PANEL);
    double stepY = step(most);
    for (double value = 0; value <= most * 1.0001; value += stepY) {
      double y = y(value, most, topY);
      add(out, "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" ", LEFT, WIDTH - RIGHT, y, y);
      add(out, "stroke=\"%s\"/>\n", value == 0 ? "black" : "#ddd");
      text(out, LEFT - 8, y + 4, "end", number(value));
    }
    double stepX = step(lastAt);
    for (double time = 0; time <= lastAt * 1.0001; time += stepX) {
      text(out, x(time, lastAt), topY + PANEL + 16, "middle", number(time));
    }
    for (int i = 0; i < panel.curves().size(); i++) {
      Curve curve = panel.curves().get(i);
      String colour = COLOURS.get(i % COLOURS.size());
      curve(out, curve, colour, at, most, topY);
      double y = topY + 14 + i * LEGEND_LINE;
      add(out, "<line x1=\"%d\" x2=\"%d\" ", WIDTH - RIGHT + 12, WIDTH - RIGHT + 32);
      add(out, "y1=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" stroke-width=\"2\"/>\n", y, y, colour);
      text(out, WIDTH - RIGHT + 38, y + 4, "start", curve.name());
    }
  }

  private static void curve(
      StringBuilder out, Curve curve, String colour, double[] at, double most, int topY) {
    add(out, "<path fill=\"none\" stroke=\"%s\" stroke-width=\"1.6\" d=\"", colour);
    boolean drawn = false;
    for (int i = 0; i < at.length; i++) {
      double value = curve.values().get(i);
      if (Double.isFinite(value)) {
        add(
            out,
            "%s%.1f %.1f",
            drawn ? "L" : "M",
            x(at[i], at[at.length - 1]),
            y(value, most, topY));
      }
      drawn = Double.isFinite(value);
    }
    add(out, "\"/>\n");
  }

  private static double x(double time, double lastAt) {
    return LEFT + (WIDTH - LEFT - RIGHT) * (lastAt > 0 ? Math.min(1, time / lastAt) : 0);
  }

  private static double y(double value, double most, int topY) {
    return topY + PANEL * (1 - value / most);
  }

  /** 1, 2 or 5 times a power of ten, so that no more marks come than can be read. */
  private static double step(double most) {
    double step = Math.pow(10, Math.floor(Math.log10(Math.max(most, 1e-6) / MOST_MARKS)));
    for (double factor : new double[] {1, 2, 5, 10}) {
      if (most / (step * factor) <= MOST_MARKS) {
        return step * factor;
      }
    }
    return step * 20;
  }

  private static String number(double value) {
    return value == Math.rint(value)
        ? String.format(Locale.ROOT, "%.0f", value)
        : String.format(Locale.ROOT, "%.3g", value);
  }

  /** Words of ours alone: nothing in them needs escaping. */
  private static void text(StringBuilder out, double x, double y, String anchor, String words) {
    add(out, "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>\n", x, y, anchor, words);
  }

  private static void add(StringBuilder out, String words, Object... values) {
    out.append(String.format(Locale.ROOT, words, values));
  }
}
