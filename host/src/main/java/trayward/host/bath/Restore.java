package trayward.host.bath;

import java.util.ArrayList;
import java.util.List;

/**
 * What to pour in so that bromide and sulfite are again what they were. Immutable.
 *
 * <p>Only stock solutions can be added; what is too much can only be thinned, which thins the
 * developer too, so it is told and left to the person.
 *
 * @param bromideMl potassium bromide of {@value #PERCENT} %, mL; 0 for none
 * @param sulfiteMl sodium sulfite of {@value #PERCENT} %, mL; 0 for none
 * @param tooMuch what there is too much of, a clause each, with the water that would thin it
 */
public record Restore(double bromideMl, double sulfiteMl, List<String> tooMuch) {

  /** Weight in volume of the stock solutions reckoned with, percent: the usual one. */
  public static final int PERCENT = 10;

  /** Less than this is within what a syringe can tell, mL. */
  private static final double LEAST_ML = 0.5;

  /** Grams in each millilitre of stock. */
  private static final double STOCK_G_PER_ML = PERCENT / 100.0;

  /** Copies. */
  public Restore {
    tooMuch = List.copyOf(tooMuch);
  }

  /**
   * Reckons it.
   *
   * @param now what the bath holds
   * @param bromideGPerL bromide as it shall be, g/L
   * @param sulfiteGPerL sulfite as it shall be, g/L
   */
  public static Restore of(BathContents now, double bromideGPerL, double sulfiteGPerL) {
    double litres = now.litres().value();
    double bromide = litres * (bromideGPerL - now.bromideGPerL().value());
    double sulfite = litres * (sulfiteGPerL - now.sulfiteGPerL().value());
    double b = bromideGPerL / 1000;
    double s = sulfiteGPerL / 1000;
    // Each pour thins the other: (c - b) x - b y = bromide; - s x + (c - s) y = sulfite.
    double determinant = (STOCK_G_PER_ML - b) * (STOCK_G_PER_ML - s) - b * s;
    double x = ((STOCK_G_PER_ML - s) * bromide + b * sulfite) / determinant;
    double y = ((STOCK_G_PER_ML - b) * sulfite + s * bromide) / determinant;
    if (x < 0) {
      y = sulfite / (STOCK_G_PER_ML - s);
    }
    if (y < 0) {
      x = bromide / (STOCK_G_PER_ML - b);
    }
    List<String> tooMuch = new ArrayList<>();
    thin(tooMuch, "bromide", litres, now.bromideGPerL().value(), bromideGPerL);
    thin(tooMuch, "sulfite", litres, now.sulfiteGPerL().value(), sulfiteGPerL);
    return new Restore(pour(x), pour(y), tooMuch);
  }

  private static double pour(double ml) {
    return ml >= LEAST_ML ? ml : 0;
  }

  private static void thin(List<String> out, String what, double litres, double is, double was) {
    double ml = was > 0 ? 1000 * litres * (is / was - 1) : Double.POSITIVE_INFINITY;
    if (is > 0 && ml > LEAST_ML) {
      out.add(
          Double.isInfinite(ml) || ml > BookEntry.MILLILITRES_MAX
              ? "more " + what + " than then, more than water could thin"
              : String.format(
                  java.util.Locale.ROOT,
                  "more %s than then: %.0f mL of water would thin it, and the developer with it",
                  what,
                  ml));
    }
  }
}
