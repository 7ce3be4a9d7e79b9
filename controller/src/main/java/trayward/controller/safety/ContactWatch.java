package trayward.controller.safety;

import java.util.Optional;

/**
 * The contact test of SR-26: in every purge each relay is closed alone; heat that arrives then came
 * through the other contact, which is welded. A value; {@link #next} returns the following one.
 * Pure.
 *
 * <p>Heat is seen as a bend: the reading leaves the straight line of the time before. Where a plate
 * probe is fitted it is the plate's: 128 W into 1800 J/K bend it by 1.2 K within 25 s. The bath
 * alone bends by 0.25 K in 25 s over one litre (250 W); weak heaters under much liquid stay unseen
 * here and are left to the watch over heat.
 *
 * @param stage where the test stands
 * @param stageS time in this stage, s
 * @param offS time since heat was last commanded, s
 * @param hot readings of the plate; of the bath where no plate probe is fitted
 * @param bath readings of the bath
 * @param hotBefore the line of the time before this relay was closed
 * @param bathBefore the same of the bath
 * @param suspect the relay a first test accused: a second one decides, because a probe put back on
 *     its plate or a jug of warm water may bend one course, and hardly twice in the same place
 */
public record ContactWatch(
    ContactStage stage,
    double stageS,
    double offS,
    Course hot,
    Course bath,
    Course.Line hotBefore,
    Course.Line bathBefore,
    Optional<Relay> suspect) {

  /** Time a line is drawn through, s: noise of 0.05 K leaves 0.002 K/s and 0.001 K/s. */
  private static final double LINE_PLATE_S = 20;

  private static final double LINE_BATH_S = 30;

  /** A lagging probe has seen what came when this has passed, s; a bath needs its plate's time. */
  private static final double AFTER_PLATE_S = 4;

  private static final double AFTER_BATH_S = 25;

  /** Halves of a calm line differ less, K/s: three times what noise of 0.05 K makes of them. */
  private static final double CALM_K_PER_S = 0.02;

  /**
   * A plate that nears its bath faster than this is too hot or cold for the test, K/s: its own bend
   * could pass for heat (0.36 K where it forgets in 15 s).
   */
  private static final double NEARS_K_PER_S = 0.03;

  /** A plate forgets with capacity over coupling, s: 61 for the reference tray, 15 to 150 seen. */
  private static final double FORGETS_S = 61;

  /** A slow plate (1800 J/K over 12 W/K) has passed its heat on after two time constants, s. */
  private static final double COASTED_S = 300;

  /** Bend that only heat makes, K. */
  private static final double BEND_PLATE_K = 0.7;

  private static final double BEND_BATH_K = 0.2;

  /** A bend so large needs no more time, K: every further second adds heat. */
  private static final double PLAIN_K = 2;

  /** A bath that bends by half of it, and by this, was poured into: the test begins again. */
  private static final double POURED_K = 1;

  private static final double POURED_SHARE = 0.5;

  /** More than this from one reading to the next is no heat, K: 400 W into 90 J/K make 4 K/s. */
  private static final double LEAP_K = 5;

  /** The same of a bath, K: 250 W into a tenth of a litre make 0.6 K/s. */
  private static final double LEAP_BATH_K = 0.75;

  private static final double LONG_S = 1e6; // saturates

  /**
   * A watch at power-up.
   *
   * @param heated whether heat was in progress when power was lost: the plate may still be hot
   */
  public static ContactWatch start(boolean heated) {
    return calming(heated ? 0 : LONG_S, Course.START, Course.START, Optional.empty());
  }

  private static ContactWatch calming(
      double offS, Course hot, Course bath, Optional<Relay> suspect) {
    Course.Line none = Course.Line.NONE;
    return new ContactWatch(ContactStage.CALMING, 0, offS, hot, bath, none, none, suspect);
  }

  private ContactWatch anew(Optional<Relay> accused) {
    return calming(offS, Course.START, Course.START, accused);
  }

  private ContactWatch to(ContactStage next) {
    return new ContactWatch(next, 0, offS, hot, bath, hotBefore, bathBefore, suspect);
  }

  /** Which relay is to be closed alone now. */
  public Optional<Relay> closes() {
    return switch (stage) {
      case HEATER_ALONE -> Optional.of(Relay.HEATER);
      case SAFETY_ALONE -> Optional.of(Relay.SAFETY);
      case CALMING, HEATER_AFTER, SAFETY_AFTER, SOUND, HEATER_WELDED, SAFETY_WELDED ->
          Optional.empty();
    };
  }

  /** Both contacts have been seen to open in this purge. */
  public boolean sound() {
    return stage == ContactStage.SOUND;
  }

  /** The relay whose contact let heat through. */
  public Optional<Relay> welded() {
    return switch (stage) {
      case HEATER_WELDED -> Optional.of(Relay.HEATER);
      case SAFETY_WELDED -> Optional.of(Relay.SAFETY);
      case CALMING, HEATER_ALONE, HEATER_AFTER, SAFETY_ALONE, SAFETY_AFTER, SOUND ->
          Optional.empty();
    };
  }

  /**
   * After one scan.
   *
   * @param in what the scan found
   * @param closedMs how long each relay is closed alone, ms
   */
  public ContactWatch next(ThermalInput in, int closedMs) {
    boolean seesPlate = in.plate().known();
    double off = in.heatCommanded() ? 0 : Math.min(LONG_S, offS + in.elapsedS());
    Course hotNow = hot.next(seesPlate ? in.plate() : in.bath());
    Course bathNow = bath.next(in.bath());
    if (in.state() != State.PURGING) {
      return calming(off, hotNow, bathNow, Optional.empty());
    }
    double time = stageS + in.elapsedS();
    ContactWatch now =
        new ContactWatch(stage, time, off, hotNow, bathNow, hotBefore, bathBefore, suspect);
    return switch (stage) {
      case CALMING -> now.calm(seesPlate) ? now.begin(now.first(), seesPlate) : now;
      case HEATER_ALONE -> now.closed(closedMs, ContactStage.HEATER_AFTER, seesPlate);
      case HEATER_AFTER -> now.after(ContactStage.SAFETY_ALONE, seesPlate);
      case SAFETY_ALONE -> now.closed(closedMs, ContactStage.SAFETY_AFTER, seesPlate);
      case SAFETY_AFTER -> now.after(ContactStage.SOUND, seesPlate);
      case SOUND, HEATER_WELDED, SAFETY_WELDED -> now;
    };
  }

  /** A second test of an accused contact begins where the first one accused it. */
  private ContactStage first() {
    return suspect.equals(Optional.of(Relay.HEATER))
        ? ContactStage.SAFETY_ALONE
        : ContactStage.HEATER_ALONE;
  }

  private static double lineS(boolean seesPlate) {
    return seesPlate ? LINE_PLATE_S : LINE_BATH_S;
  }

  private boolean calm(boolean seesPlate) {
    double window = lineS(seesPlate);
    if (hot.spanS() < window - 2 || bath.spanS() < window - 2 || (!seesPlate && offS < COASTED_S)) {
      return false;
    }
    return straight(hot, window)
        && straight(bath, window)
        && Math.abs(hot.line(window, 0).slope() - bath.line(window, 0).slope()) < NEARS_K_PER_S;
  }

  private static boolean straight(Course course, double window) {
    double late = course.line(window / 2, 0).slope();
    double early = course.line(window, window / 2).slope();
    return Math.abs(late - early) < CALM_K_PER_S;
  }

  private ContactWatch begin(ContactStage next, boolean seesPlate) {
    double window = lineS(seesPlate);
    return new ContactWatch(
        next, 0, offS, hot, bath, hot.line(window, 0), bath.line(window, 0), suspect);
  }

  private ContactWatch closed(int closedMs, ContactStage next, boolean seesPlate) {
    if (disturbed(seesPlate)) {
      return anew(suspect);
    }
    if (bendK() >= PLAIN_K && risesK() >= PLAIN_K) {
      return accuses();
    }
    return stageS >= closedMs / 1000.0 ? to(next) : this;
  }

  private ContactWatch after(ContactStage next, boolean seesPlate) {
    if (disturbed(seesPlate)) {
      return anew(suspect);
    }
    if (stageS < (seesPlate ? AFTER_PLATE_S : AFTER_BATH_S)) {
      return this;
    }
    double enough = seesPlate ? BEND_PLATE_K : BEND_BATH_K;
    // A covered bath cools less than before and bends too; it does not grow warmer by that.
    boolean heated = bendK() >= enough && (seesPlate || risesK() >= enough);
    return heated ? accuses() : begin(next, seesPlate);
  }

  /** Heat came while one relay was closed: through the contact of the other. */
  private ContactWatch accuses() {
    Optional<Relay> accused = points();
    if (!accused.equals(suspect)) {
      return anew(accused);
    }
    return to(
        accused.equals(Optional.of(Relay.SAFETY))
            ? ContactStage.SAFETY_WELDED
            : ContactStage.HEATER_WELDED);
  }

  /** The relay through whose contact heat would come now; empty where both are open. */
  public Optional<Relay> points() {
    return switch (stage) {
      case HEATER_ALONE, HEATER_AFTER, SAFETY_WELDED -> Optional.of(Relay.SAFETY);
      case SAFETY_ALONE, SAFETY_AFTER, HEATER_WELDED -> Optional.of(Relay.HEATER);
      case CALMING, SOUND -> Optional.empty();
    };
  }

  private double risesK() {
    return hot.mean() - hotBefore.celsius();
  }

  /** How far the newest readings stand above the course of before, K. */
  private double bendK() {
    return hot.mean() - hotBefore.at(hot.meanAtS()) - ownBendK();
  }

  /** How far a plate that nears its bath leaves its line by itself; 0 without a plate probe. */
  private double ownBendK() {
    // The line has the slope of the middle of its time.
    double time = hot.meanAtS() - hotBefore.atS() + LINE_PLATE_S / 2;
    double nears = hotBefore.slope() - bathBefore.slope();
    return -nears * FORGETS_S * (Math.expm1(-time / FORGETS_S) + time / FORGETS_S);
  }

  /** Poured into, or a reading that leapt as no heat makes it: a probe moved, or its fault. */
  private boolean disturbed(boolean seesPlate) {
    double bathK = Math.abs(bath.mean() - bathBefore.at(bath.meanAtS()));
    boolean poured =
        seesPlate
            ? bathK >= Math.max(POURED_K, POURED_SHARE * bendK())
            : bathK >= PLAIN_K
                || bath.mean() < bathBefore.at(bath.meanAtS()) - BEND_BATH_K
                || bath.stepK() >= LEAP_BATH_K;
    return poured || hot.stepK() >= LEAP_K;
  }
}
