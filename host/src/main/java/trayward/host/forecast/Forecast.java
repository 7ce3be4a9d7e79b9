package trayward.host.forecast;

import java.util.List;
import java.util.Locale;

/** What can be said of a coming moment of a print: a window, or why there is none. Immutable. */
public sealed interface Forecast {

  /** The moment that is forecast. */
  enum Moment {
    /** The first blacks. */
    EMERGENCE("emergence"),
    /** Out of the developer. */
    PULL("pull");

    private final String word;

    Moment(String word) {
      this.word = word;
    }

    /** What it is called. */
    public String word() {
      return word;
    }
  }

  /** One line for the person at the tray. */
  String words();

  /**
   * A window. All times are seconds from in.
   *
   * @param moment what is waited for
   * @param expectedS the middle: as likely before as after
   * @param eighty interval that should hold four of five
   * @param ninetyFive interval that should hold nineteen of twenty
   * @param prints how many prints stand behind it
   * @param open whether the sheet has come as far as the early end of the 80 %: watch now
   * @param caveats what makes it less sure, a clause each
   */
  record Window(
      Moment moment,
      double expectedS,
      Interval eighty,
      Interval ninetyFive,
      int prints,
      boolean open,
      List<String> caveats)
      implements Forecast {

    /** Copies. */
    public Window {
      caveats = List.copyOf(caveats);
    }

    /**
     * When to start watching: the early end of the window of 80 %, to the second before; now, once
     * that has passed. One print in ten comes before it: who wants less risk takes the 95 %.
     */
    public String startWatching() {
      return open ? "watch now" : "start watching from " + down(eighty.low());
    }

    /** The windows and what stands behind them. Promises nothing. */
    public String howSure() {
      return String.format(
          Locale.ROOT,
          "80 %%: %s, 95 %%: %s, from %d %s",
          span(eighty),
          span(ninetyFive),
          prints,
          prints == 1 ? "print" : "prints");
    }

    @Override
    public String words() {
      String caveat = caveats.isEmpty() ? "" : " (" + String.join("; ", caveats) + ")";
      return moment.word() + ": " + startWatching() + "; " + howSure() + caveat;
    }

    private static String span(Interval window) {
      return down(window.low()) + " to " + clock(Math.ceil(window.high()));
    }

    private static String down(double s) {
      return clock(Math.floor(s));
    }

    private static String clock(double s) {
      long whole = Math.round(s);
      return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }
  }

  /**
   * No window.
   *
   * @param reason why, in a clause
   */
  record Refused(String reason) implements Forecast {

    @Override
    public String words() {
      return "no forecast: " + reason;
    }
  }
}
