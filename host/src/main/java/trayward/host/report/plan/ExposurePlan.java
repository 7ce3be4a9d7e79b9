package trayward.host.report.plan;

import static trayward.host.report.plan.PlanOption.number;

import java.util.List;
import java.util.Optional;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.exposure.Reciprocity;
import trayward.host.exposure.Rescale;
import trayward.host.exposure.Safelight;
import trayward.host.exposure.Stops;
import trayward.host.exposure.TestStrip;

/** Exposure in stops: times, apertures, sizes, strips, and how long the safelight may shine. */
final class ExposurePlan implements Planner {

  static final PlanOption TIME = number("time", "exposure there is", "s", 0.1, 36_000);
  static final PlanOption STOPS =
      number("stops", "stops more, less than 0 for fewer, such as 7/3 or -1/3", "stops", -20, 20);
  static final PlanOption TO_TIME =
      number("to_time", "another time: how many stops away", "s", 0.1, 36_000);
  static final PlanOption FROM_F = number("from_f", "f-number there is", "", 0.5, 128);
  static final PlanOption TO_F = number("to_f", "f-number to be", "", 0.5, 128);
  static final PlanOption FROM_SIZE =
      number("from_magnification", "image over negative there is", "times", 0.05, Rescale.MOST);
  static final PlanOption TO_SIZE =
      number("to_magnification", "image over negative to be", "times", 0.05, Rescale.MOST);
  static final PlanOption NEGATIVE =
      number("negative", "in place of magnifications: a length on the negative", "mm", 1, 1000);
  static final PlanOption FROM_PRINT =
      number("from_print", "the same length on the print there is", "mm", 1, 5000);
  static final PlanOption TO_PRINT =
      number("to_print", "the same length on the print to be", "mm", 1, 5000);
  static final PlanOption P =
      number("p", "the paper's exponent of reciprocity, by test", "", Reciprocity.LEAST, 1).or(1);
  static final PlanOption STEP =
      number("strip_step", "a test strip from --time on, in steps of", "stops", 0.05, 4);
  static final PlanOption STEPS =
      number("strip_steps", "how many steps, a whole number, else 7", "", 2, TestStrip.MOST_STEPS);
  static final PlanOption CLEAN =
      number("clean", "safelight test: longest time without a change", "min", 0.1, 240);
  static final PlanOption FOGGED =
      number("fogged", "safelight test: shortest time with a change", "min", 0.1, 240);

  @Override
  public String name() {
    return "exposure";
  }

  @Override
  public String description() {
    return "Exposure in stops: times, apertures, print sizes, test strips, safelight.";
  }

  @Override
  public List<PlanOption> options() {
    return List.of(
        TIME,
        STOPS,
        TO_TIME,
        FROM_F,
        TO_F,
        FROM_SIZE,
        TO_SIZE,
        NEGATIVE,
        FROM_PRINT,
        TO_PRINT,
        P,
        STEP,
        STEPS,
        CLEAN,
        FOGGED);
  }

  @Override
  public Checked<PlanAnswer> answer(PlanWords w) {
    Optional<Problem> wrong = clash(w);
    if (wrong.isPresent()) {
      return new Checked.Bad<>(wrong.get());
    }
    PlanAnswer a = new PlanAnswer(name(), w);
    change(w, a);
    if (w.has(TO_TIME)) {
      double stops = Stops.between(w.number(TIME), w.number(TO_TIME));
      a.number("stops_between", "from one time to the other", stops, "stops");
    }
    strip(w, a);
    if (w.has(CLEAN)) {
      double most = new Safelight(w.number(CLEAN), w.number(FOGGED)).longestMin();
      a.number("safelight_min", "paper may lie in this light for", most, "min");
      a.caution(
          "From box to stop bath, and only for this paper, lamp and distance. The test's paper must"
              + " have been exposed before.");
    }
    if (w.number(P) < 1) {
      a.caution("The exponent holds for one paper in one range of times: make a test strip.");
    }
    return new Checked.Good<>(a);
  }

  private static Optional<Problem> clash(PlanWords w) {
    boolean changes = w.has(STOPS) || w.has(TO_TIME) || w.has(STEP) || w.has(STEPS);
    boolean light = w.has(FROM_F) || w.has(FROM_SIZE) || w.has(NEGATIVE) || w.has(CLEAN);
    if (w.has(NEGATIVE) && w.has(FROM_SIZE)) {
      return Optional.of(
          new Problem(
              NEGATIVE.name(), w.text(NEGATIVE), "either lengths or magnifications, not both"));
    }
    Optional<Problem> pair =
        w.together(FROM_F, TO_F)
            .or(() -> w.together(FROM_SIZE, TO_SIZE))
            .or(() -> w.together(NEGATIVE, FROM_PRINT, TO_PRINT))
            .or(() -> w.together(CLEAN, FOGGED));
    if (pair.isPresent()) {
      return pair;
    }
    if (!w.has(TIME) && (changes || !light)) {
      return Optional.of(new Problem(TIME.name(), "nothing", TIME.accepted()));
    }
    return w.has(STEPS) && !w.has(STEP)
        ? Optional.of(new Problem(STEP.name(), "nothing", STEP.accepted()))
        : numbers(w);
  }

  /** What the ranges alone do not tell. */
  private static Optional<Problem> numbers(PlanWords w) {
    if (w.has(STEPS) && w.number(STEPS) != Math.rint(w.number(STEPS))) {
      return Optional.of(new Problem(STEPS.name(), w.text(STEPS), STEPS.accepted() + ", whole"));
    }
    if (w.has(CLEAN) && w.number(FOGGED) < w.number(CLEAN)) {
      return Optional.of(
          new Problem(FOGGED.name(), w.text(FOGGED), "at least the " + w.text(CLEAN) + " min"));
    }
    boolean far =
        w.has(NEGATIVE)
            && Math.max(w.number(FROM_PRINT), w.number(TO_PRINT))
                > Rescale.MOST * w.number(NEGATIVE);
    return far
        ? Optional.of(
            new Problem(NEGATIVE.name(), w.text(NEGATIVE), "a hundredth of the print or more"))
        : Optional.empty();
  }

  private static Optional<Rescale> rescale(PlanWords w) {
    if (w.has(NEGATIVE)) {
      return Optional.of(
          Rescale.ofLengths(w.number(NEGATIVE), w.number(FROM_PRINT), w.number(TO_PRINT)));
    }
    return w.has(FROM_SIZE)
        ? Optional.of(new Rescale(w.number(FROM_SIZE), w.number(TO_SIZE)))
        : Optional.empty();
  }

  /** All that asks for more or less exposure, together. */
  private static void change(PlanWords w, PlanAnswer a) {
    double stops = w.has(STOPS) ? w.number(STOPS) : 0;
    if (w.has(FROM_F)) {
      double aperture = -Stops.betweenApertures(w.number(FROM_F), w.number(TO_F));
      a.number("aperture_stops", "the aperture asks for", aperture, "stops");
      stops += aperture;
    }
    Optional<Rescale> size = rescale(w);
    if (size.isPresent()) {
      a.number("size_stops", "the size asks for", size.get().stops(), "stops");
      a.number("size_factor", "  as a factor", size.get().factor(), "");
      stops += size.get().stops();
    }
    boolean asked = w.has(STOPS) || w.has(FROM_F) || size.isPresent();
    if (asked && w.has(TIME)) {
      double seconds = new Reciprocity(w.number(P)).seconds(w.number(TIME), stops);
      a.number("stops", "in all", stops, "stops");
      a.number("time_s", "new time", seconds, "s");
    }
  }

  private static void strip(PlanWords w, PlanAnswer a) {
    if (w.has(STEP)) {
      TestStrip strip = new TestStrip(w.number(TIME), w.number(STEP), (int) w.numberOr(STEPS, 7));
      a.list("strip_totals_s", "strip, each part in all", strip.totalsS(), "s");
      a.list("strip_exposures_s", "  given one after the other", strip.exposuresS(), "s");
    }
  }
}
