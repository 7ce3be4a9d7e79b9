package trayward.host.app.goals;

import java.util.List;
import java.util.Locale;

/**
 * {@code goals.svg}: a panel each for heat-up, pour and cold sheet; a column for each case and
 * contender; a dot for each tray, a dash at the median, the bound at 1. Stateless.
 */
final class GoalsPlot {

  private static final int WIDTH = 900;
  private static final int LEFT = 60;
  private static final int PANEL = 240;
  private static final int GAP = 70;
  private static final int TOP = 60;

  /** The axis ends here: what is slower stands on its edge, what never arrives above it. */
  private static final double MOST = 4;

  private static final int NEVER_ABOVE = 16;

  private static final List<Measure> PANELS = List.of(Measure.HEAT_UP, Measure.POUR, Measure.SHEET);

  private static final List<GoalCase> CASES =
      List.of(GoalCase.TWO_PROBES, GoalCase.TRAY_WALL, GoalCase.LEARNED, GoalCase.ONE_PROBE);

  private GoalsPlot() {}

  static String of(Measured m) {
    int height = TOP + PANELS.size() * (PANEL + GAP);
    StringBuilder out = new StringBuilder();
    add(out, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" ", WIDTH, height);
    add(out, "font-family=\"sans-serif\" font-size=\"13\">\n");
    add(out, "<rect width=\"%d\" height=\"%d\" fill=\"white\"/>\n", WIDTH, height);
    legend(out, m);
    for (int i = 0; i < PANELS.size(); i++) {
      panel(out, m, PANELS.get(i), TOP + i * (PANEL + GAP) + 30);
    }
    return out.append("</svg>\n").toString();
  }

  private static void legend(StringBuilder out, Measured m) {
    int x = LEFT;
    for (Contender contender : Contender.values()) {
      dot(out, x, 26, contender);
      text(out, x + 10, 30, "start", contender.words());
      x += 110;
    }
    String goal = "grey dash: goal; line at 1: the bound; " + m.trays().size() + " trays";
    text(out, x + 10, 30, "start", goal);
  }

  private static void panel(StringBuilder out, Measured m, Measure measure, int topY) {
    int bottomY = topY + PANEL;
    text(out, LEFT, topY - 22, "start", measure.words());
    for (double ratio : new double[] {1, 1.5, 2, 3, MOST}) {
      double y = y(ratio, topY);
      add(out, "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" ", LEFT, WIDTH - 20, y, y);
      add(out, "stroke=\"%s\"/>\n", ratio == 1 ? "black" : "#ddd");
      text(out, LEFT - 8, y + 4, "end", label(ratio));
    }
    text(out, LEFT - 8, topY - NEVER_ABOVE + 4, "end", "never");
    double caseW = (double) (WIDTH - 20 - LEFT) / CASES.size();
    for (int c = 0; c < CASES.size(); c++) {
      double fromX = LEFT + c * caseW;
      GoalCase in = CASES.get(c);
      text(out, fromX + caseW / 2, bottomY + 20, "middle", in.words());
      double columnW = caseW / (Contender.values().length + 1);
      double x = fromX;
      for (Contender contender : Contender.values()) {
        x += columnW;
        column(out, m, in, contender, measure, x, topY);
      }
    }
  }

  /** The last line is the edge: what lies on it may be slower. */
  private static String label(double ratio) {
    return ratio == 1 ? "1" : ratio == MOST ? ratio + "+" : String.valueOf(ratio);
  }

  private static void column(
      StringBuilder out,
      Measured m,
      GoalCase in,
      Contender contender,
      Measure measure,
      double x,
      int topY) {
    if (contender == Contender.OURS && in.goal(measure).isPresent()) {
      dash(out, x, y(in.goal(measure).getAsDouble(), topY), "#888");
    }
    int i = 0;
    for (TrayFigures tray : m.trays()) {
      // Dots side by side a little, or they would hide each other.
      double besideX = x + (i++ % 5 - 2) * 3;
      dot(out, besideX, y(tray.figure(in, contender, measure), topY), contender);
    }
    dash(out, x, y(m.spread(in, contender, measure).median(), topY), "black");
  }

  /** Logarithmic: half as fast is as far from the bound everywhere. */
  private static double y(double ratio, int topY) {
    if (!Double.isFinite(ratio)) {
      return topY - NEVER_ABOVE;
    }
    double share = Math.log(Math.max(0.98, Math.min(MOST, ratio))) / Math.log(MOST);
    return topY + PANEL * (1 - share);
  }

  private static void dot(StringBuilder out, double x, double y, Contender contender) {
    String fill =
        switch (contender) {
          case OURS -> "#c00000";
          case PID -> "#2060c0";
          case THERMOSTAT -> "#e09020";
        };
    add(out, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3.5\" fill=\"%s\" ", x, y, fill);
    add(out, "fill-opacity=\"0.55\"/>\n");
  }

  private static void dash(StringBuilder out, double x, double y, String stroke) {
    add(out, "<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%.1f\" y2=\"%.1f\" ", x - 14, x + 14, y, y);
    add(out, "stroke=\"%s\" stroke-width=\"2\"/>\n", stroke);
  }

  /** Words of ours alone: nothing in them needs escaping. */
  private static void text(StringBuilder out, double x, double y, String anchor, String words) {
    add(out, "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>\n", x, y, anchor, words);
  }

  private static void add(StringBuilder out, String words, Object... values) {
    out.append(String.format(Locale.ROOT, words, values));
  }
}
