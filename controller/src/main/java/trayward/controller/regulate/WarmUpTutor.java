package trayward.controller.regulate;

import org.jspecify.annotations.Nullable;

/**
 * Learns a tray from one warm-up: keeps its log and asks for fits, the last some minutes after the
 * bath has arrived. Mutable; scan thread only.
 */
final class WarmUpTutor {

  /** First fit after so many seconds of heat: before it nothing but the prior speaks. */
  private static final int FIRST_FIT_S = 30;

  private static final int FIT_EACH_S = 8;

  /** The hold after the coast teaches losses; so much of it is enough, s. */
  private static final int HOLD_S = 300;

  /** A bath this close to its set temperature needs no lesson, K. */
  private static final double WORTH_K = 3;

  /** A tray of two lumps that misses its readings by this is another tray, K. */
  private static final double MISFIT_K = 0.5;

  private static final int NOT_ASKED = -1;

  private final TrayBelief prior;
  private final TrayDoubt doubt;
  private final RoomModel room;
  private final Fits fits;
  private @Nullable WarmUpLog log;
  private @Nullable TrayLesson lesson;
  private FitPoint point = FitPoint.PRIOR;
  private double plateStartC;
  private double bathStartC;
  private int nextFitS;
  private int arrivedS;
  private int lastS = NOT_ASKED;
  private boolean over;

  WarmUpTutor(TrayBelief prior, TrayDoubt doubt, RoomModel room, Fits fits) {
    this.prior = prior;
    this.doubt = doubt;
    this.room = room;
    this.fits = fits;
  }

  /** What has been learned so far; null before the first fit. */
  @Nullable TrayLesson lesson() {
    return lesson;
  }

  /** Whether a warm-up goes on, its arrival and the minutes after it included. */
  boolean learning() {
    return log != null;
  }

  /** Takes down a scan. */
  void see(RegulatorInput in, boolean newBath, boolean newPlate) {
    WarmUpLog l = log;
    if (l == null) {
      return;
    }
    l.heat(in.elapsedS(), in.heating());
    if (newBath) {
      l.bath(in.bathC(), in.bathTakenNanos());
    }
    if (newPlate) {
      l.plate(in.plateC(), in.plateTakenNanos());
    }
  }

  /** Begins where heat is allowed to a bath that has far to go. */
  void begin(RegulatorInput in, TrayObserver o) {
    if (over || log != null || !in.heatAllowed() || in.setC() - o.bathC() <= WORTH_K) {
      return;
    }
    log = new WarmUpLog(in.nowNanos());
    plateStartC = o.plateC();
    bathStartC = o.bathC();
    nextFitS = FIRST_FIT_S;
    arrivedS = 0;
  }

  /** Something was done to the bath: what is learned so far is all. */
  void disturbed() {
    over |= log != null;
    log = null;
  }

  /** Asks for a fit where one is due. */
  void ask(TrayPhase phase) {
    WarmUpLog l = log;
    if (l == null) {
      return;
    }
    if (l.full()) {
      disturbed();
      return;
    }
    if (phase == TrayPhase.HOLD && arrivedS == 0 && l.seconds() > FIRST_FIT_S) {
      arrivedS = l.seconds();
    }
    boolean last = arrivedS > 0 && l.seconds() >= arrivedS + HOLD_S;
    boolean due = phase == TrayPhase.FULL && l.seconds() >= nextFitS;
    boolean lastDue = last && lastS == NOT_ASKED;
    if (due || lastDue) {
      nextFitS = l.seconds() + FIT_EACH_S;
      boolean asked =
          fits.ask(new FitJob(l.view(), room, prior, doubt, plateStartC, bathStartC, point));
      lastS = last && asked ? l.seconds() : NOT_ASKED;
    }
  }

  /**
   * A new fit, where one has come and is good.
   *
   * @return null where there is none to be acted upon
   */
  @Nullable FitResult take() {
    FitResult found = fits.take();
    WarmUpLog l = log;
    if (found == null || l == null || found.job().view().log() != l) {
      return null;
    }
    if (!(found.rmsK() < MISFIT_K)) {
      return null; // the last good one stays
    }
    // What was heated since the fit was asked for.
    WarmUpLog.View now = l.view();
    for (int i = found.job().view().seconds(); i < now.seconds(); i++) {
      found.run().second(now.heat(i));
    }
    point = found.point();
    boolean complete = found.job().view().seconds() == lastS;
    lesson = new TrayLesson(prior.model().liquidL(), found, complete);
    if (complete) {
      over = true;
      log = null;
    }
    return found;
  }
}
