package trayward.controller.app;

import trayward.controller.quantity.Range;

/**
 * The {@code [book]} table: what the bath book reckons with. Nobody measures these at a tray; they
 * are estimates, each with its give or take (coverage factor 2). The controller only reads them, so
 * that one file serves both halves.
 *
 * @param silverGPerM2 silver developed by a print, g/m²
 * @param silverDoubtGPerM2 give or take, g/m²
 * @param carryOutMlPerM2 bath that leaves with a drained sheet, mL/m²
 * @param carryOutDoubtMlPerM2 give or take, mL/m²
 * @param vapourDoubt give or take of the computed vapour, a share of it
 */
public record BookTable(
    double silverGPerM2,
    double silverDoubtGPerM2,
    double carryOutMlPerM2,
    double carryOutDoubtMlPerM2,
    double vapourDoubt) {

  /** More silver than any paper has, g/m². */
  private static final Range SILVER = new Range(0, 5, "g/m²");

  /** A sheet that is not drained at all carries as much, mL/m². */
  private static final Range CARRY_OUT = new Range(0, 1000, "mL/m²");

  private static final Range SHARE = new Range(0, 1, "");

  static BookTable read(Section table) throws ConfigRefused {
    BookTable book =
        new BookTable(
            table.number("silver_g_per_m2", 0.6, SILVER),
            table.number("silver_doubt_g_per_m2", 0.6, SILVER),
            table.number("carry_out_ml_per_m2", 220, CARRY_OUT),
            table.number("carry_out_doubt_ml_per_m2", 220, CARRY_OUT),
            table.number("vapour_doubt", 0.5, SHARE));
    table.done();
    return book;
  }
}
