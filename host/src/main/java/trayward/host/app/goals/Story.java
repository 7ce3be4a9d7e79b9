package trayward.host.app.goals;

import java.util.Locale;

/**
 * What is done to a tray and when. Immutable.
 *
 * @param firstS the first disturbance, s: until then the bath is warmed up and held
 * @param endS the end, s
 * @param entries the entries of the scenario
 */
record Story(double firstS, double endS, String entries) {

  /** Proving, purge and the looks before heat take less, s. */
  private static final double BEFORE_HEAT_S = 100;

  private static final double HOUR_S = 3600;

  /** Even the slowest tray under the slowest contender is back after a pour by then, s. */
  private static final double AFTER_POUR_S = 2400;

  private static final double AFTER_SHEET_S = 1200;

  /** A covered bath coasts, falls, and is held again, s. */
  private static final double COVER_S = 1800;

  /** The story of {@code in} for a tray whose least time to the band is {@code boundS}. */
  static Story of(GoalCase in, double boundS) {
    // Some tenths of the bound and ten minutes beyond it: arrived, and settled.
    double heldS = BEFORE_HEAT_S + 1.2 * boundS + 600;
    return in.covers() ? covers(Math.ceil(heldS + 1200)) : pours(heldS);
  }

  /** A second hour of hold on all but the slowest trays, which get an hour after arriving. */
  private static Story pours(double heldS) {
    double pourS = Math.ceil(Math.max(BEFORE_HEAT_S + HOUR_S, heldS) + HOUR_S);
    double sheetS = pourS + AFTER_POUR_S;
    String entries =
        start()
            + at(pourS, "pour", "litres = 0.3\ntemp_c = 20\n")
            + at(sheetS, "sheet", "heat_capacity_j_per_k = 210\ntemp_c = 15\n");
    return new Story(pourS, sheetS + AFTER_SHEET_S, entries);
  }

  private static Story covers(double firstS) {
    String entries =
        start()
            + at(firstS, "cover", "")
            + at(firstS + COVER_S, "uncover", "")
            + at(firstS + 2 * COVER_S, "cover", "");
    return new Story(firstS, firstS + 3 * COVER_S, entries);
  }

  private static String start() {
    return at(0, "start", "");
  }

  private static String at(double tS, String word, String more) {
    return String.format(Locale.ROOT, "[[at]]\nt_s = %.1f\ndo = \"%s\"\n%s", tS, word, more);
  }

  /** The hour before the first disturbance begins, s. */
  double hourFromS() {
    return firstS - HOUR_S;
  }
}
