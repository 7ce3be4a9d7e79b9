package trayward.host.session;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A bath after the developer, and what went through it. Immutable.
 *
 * @param item what is told of it, of kind {@link ShelfKind#WORKING_BATH}
 * @param made the day it was made
 * @param through what went through it since
 * @param sinceTest what went through it since its last residual test, or since it was made
 */
public record WorkingBath(ShelfItem item, LocalDate made, Through through, Through sinceTest) {

  /**
   * Prints that had a step in a bath.
   *
   * @param prints how many
   * @param areaM2 their area, as far as their sizes are told, m²
   * @param unsized how many of them tell no size
   */
  public record Through(int prints, double areaM2, int unsized) {}

  /** Share of its capacity that is used, by the sizes told; empty where none is told of it. */
  public OptionalDouble used() {
    double capacity = item.number("capacity_m2_per_l", 0) * item.number("litres", 0);
    return capacity > 0 ? OptionalDouble.of(through.areaM2() / capacity) : OptionalDouble.empty();
  }

  /** Days since it was made, 0 or more. */
  public long ageDays(LocalDate today) {
    return Math.max(0, ChronoUnit.DAYS.between(made, today));
  }

  /** What is due: a clause each; none says that the bath is good. */
  public List<String> due(LocalDate today) {
    List<String> due = new ArrayList<>();
    if (used().orElse(0) >= 1) {
      due.add("its capacity is used up: make it new");
    }
    if (ageDays(today) > item.number("keeps_days", Double.POSITIVE_INFINITY)) {
      due.add("older than it keeps: make it new");
    }
    if (sinceTest.areaM2() >= item.number("test_every_m2", Double.POSITIVE_INFINITY)) {
      due.add("a residual test is due");
    }
    return due;
  }

  /** How used it is, in a line. */
  public String words(LocalDate today) {
    StringBuilder out = new StringBuilder();
    out.append(
        String.format(
            Locale.ROOT,
            "%d prints, %.2f m² through it%s, %d days old",
            through.prints(),
            through.areaM2(),
            used().isPresent()
                ? String.format(
                    Locale.ROOT, " (%.0f %% of its capacity)", 100 * used().getAsDouble())
                : "",
            ageDays(today)));
    if (through.unsized() > 0) {
      out.append("; ")
          .append(through.unsized())
          .append(" of them tell no size and are not counted");
    }
    return out.toString();
  }
}
