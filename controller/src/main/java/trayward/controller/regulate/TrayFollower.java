package trayward.controller.regulate;

/**
 * Follows a tray through calm and through what people do to it. In calm one observer runs. When its
 * innovations add up (a two-sided cumulative sum, Page 1954, Biometrika 41:100) it goes back to
 * where they began to, supposes that something was poured in, or that a cover came or went, and
 * runs both suppositions until the readings have told them apart. Mutable; scan thread only.
 */
final class TrayFollower {

  /** Slack of the cumulative sum, standard deviations a sample: half of the shift looked for. */
  private static final double SLACK = 0.5;

  /** Sum at which something happened: in calm reached by chance once in some hours. */
  private static final double HAPPENED = 6;

  /** The same while the last thing that happened is still being undone. */
  private static final double HAPPENED_AGAIN = 20;

  /** Scans that can be gone back: 40 s of 0.1 s. */
  private static final int BACK = 400;

  /** What came on over more scans than this needs no going back. */
  private static final int OLDEST = 200;

  /** When it was poured is asked anew with each reading for so long, s. */
  private static final double REVIEW_S = 15;

  /** A pour is looked for in steps of so many scans, and so many steps around the last answer. */
  private static final int LOOK_EACH = 5;

  private static final int AROUND = 3;

  /** Both suppositions are followed for so long, s. */
  private static final double UNDECIDED_S = 90;

  /** A fall beyond what a model still being learned may be wrong by, K, and when it is sure, s. */
  private static final double SURELY_K = 0.7;

  private static final double SURELY_S = 5;

  /**
   * So much better than that nothing happened a supposition must fit: it has a time, a size and a
   * kind to choose, and odds of a thousand to one are soon had by what is real.
   */
  private static final double EVIDENCE = 14;

  /** So much better the other supposition must fit before it is believed: odds of some 4 to 1. */
  private static final double BETTER = 3;

  /**
   * A bath that gets warmer is taken to be covered for so long, s: hot liquid is poured but rarely,
   * and to withhold heat from it for a minute does no harm.
   */
  private static final double WARMER_S = 60;

  /** So much better, and the other is given up: odds of some 20,000 to 1. */
  private static final double CLEAR = 20;

  private final TrayObserver beforeUp;
  private final TrayObserver beforeDown;
  private final TrayObserver before;
  private final TrayObserver upToThen;
  private TrayObserver calm;
  private TrayObserver poured;
  private TrayObserver covered;
  private TrayObserver likelier;
  private TrayObserver believed;
  private final ScanMemory scans = new ScanMemory(BACK);
  private boolean undecided;
  private boolean rose;
  private boolean reviewed;
  private int sinceUp;
  private int sinceDown;
  private int sinceBefore;
  private int pouredAgo;
  private int coveredAgo;
  private double pouredK;
  private double up;
  private double down;
  private double sinceHappenedS = Double.POSITIVE_INFINITY;

  TrayFollower(TrayBelief belief, RoomModel room, double bathC, double plateC) {
    beforeUp = new TrayObserver(belief, room, bathC, plateC);
    beforeDown = new TrayObserver(belief, room, bathC, plateC);
    before = new TrayObserver(belief, room, bathC, plateC);
    upToThen = new TrayObserver(belief, room, bathC, plateC);
    calm = new TrayObserver(belief, room, bathC, plateC);
    poured = new TrayObserver(belief, room, bathC, plateC);
    covered = new TrayObserver(belief, room, bathC, plateC);
    likelier = covered;
    believed = calm;
  }

  /** What is believed of plate and bath now. */
  TrayObserver now() {
    return believed;
  }

  /** Whether so much has been poured in, or so cold, that it must be a person's doing. */
  boolean poured() {
    return believed == poured && pouredK > SURELY_K && sinceHappenedS > SURELY_S;
  }

  /** Takes another belief, and where a fit says that plate and bath are. */
  void believe(TrayBelief belief, RoomModel room, TrayRun run, double lagDoubt) {
    settle();
    calm.believe(belief, room);
    calm.place(run, lagDoubt);
    forgetSums();
  }

  /** Whatever is believed now is the calm. */
  private void settle() {
    if (believed == poured) {
      poured = calm;
      calm = believed;
    } else if (believed == covered) {
      covered = calm;
      calm = believed;
    }
    undecided = false;
  }

  private void forgetSums() {
    up = 0;
    down = 0;
    beforeUp.copy(believed);
    beforeDown.copy(believed);
    sinceUp = 0;
    sinceDown = 0;
  }

  /**
   * A scan.
   *
   * @param h time since the last, s
   * @param u whether the heater was on since, 0 or 1
   * @param now its time, ns
   * @param bathC a new reading of the bath, °C; NaN where there is none
   * @param bathAt when that was true
   * @param plateC a new reading of the plate, °C; NaN where there is none
   * @param plateAt when that was true
   */
  void scan(double h, double u, long now, double bathC, long bathAt, double plateC, long plateAt) {
    scans.put(h, u, now, bathC, bathAt, plateC, plateAt);
    sinceHappenedS += h;
    sinceUp++;
    sinceDown++;
    boolean reading = !Double.isNaN(bathC);
    if (undecided) {
      sinceBefore++;
      pouredAgo++;
      coveredAgo++;
      scans.replay(calm, 1, 0);
      scans.replay(poured, 1, 0);
      scans.replay(covered, 1, 0);
      if (reading) {
        decide();
      }
    } else {
      double scaled = scans.replay(calm, 1, 0);
      if (reading) {
        sum(scaled);
      }
    }
  }

  private void sum(double scaled) {
    up = Math.max(0, up + scaled - SLACK);
    down = Math.max(0, down - scaled - SLACK);
    if (up == 0 || sinceUp >= OLDEST) {
      beforeUp.copy(calm);
      sinceUp = 0;
    }
    if (down == 0 || sinceDown >= OLDEST) {
      beforeDown.copy(calm);
      sinceDown = 0;
    }
    if (Math.max(up, down) > (sinceHappenedS < UNDECIDED_S ? HAPPENED_AGAIN : HAPPENED)) {
      somethingHappened();
    }
  }

  private void somethingHappened() {
    sinceHappenedS = 0;
    undecided = true;
    reviewed = false;
    rose = up > down;
    before.copy(rose ? beforeUp : beforeDown);
    sinceBefore = rose ? sinceUp : sinceDown;
    pouredK = 0;
    pouredAgo = lookBack(poured, sinceBefore, 1);
    coveredAgo = lookBack(covered, sinceBefore, 1);
    likelier = covered;
    calm.copy(before);
    calm.judge();
    scans.replay(calm, sinceBefore, 0);
    decide();
  }

  private void decide() {
    if (sinceHappenedS < REVIEW_S) {
      pouredAgo = lookAround(poured, pouredAgo);
      coveredAgo = lookAround(covered, coveredAgo);
    } else if (!reviewed) {
      // Not before: an error in when it was poured would be taken for more or less of it.
      poured.doubtGrowth(pouredK);
      reviewed = true;
    }
    TrayObserver rival = likelier == poured ? covered : poured;
    boolean mayBe = !rose || rival == covered || sinceHappenedS > WARMER_S;
    if (mayBe && rival.misfit() < likelier.misfit() - BETTER) {
      TrayObserver better = rival;
      rival = likelier;
      likelier = better;
    }
    boolean real = likelier.misfit() < calm.misfit() - EVIDENCE;
    believed = real ? likelier : calm;
    boolean clear =
        sinceHappenedS > (rose ? WARMER_S : REVIEW_S) && rival.misfit() > likelier.misfit() + CLEAR;
    boolean nothing = !real && sinceHappenedS > REVIEW_S;
    if (clear || nothing || sinceHappenedS > UNDECIDED_S) {
      sinceHappenedS = real ? sinceHappenedS : Double.POSITIVE_INFINITY;
      settle();
      forgetSums();
    }
  }

  private int lookAround(TrayObserver trial, int ago) {
    int around = AROUND * LOOK_EACH;
    return lookBack(trial, Math.min(sinceBefore, ago + around), Math.max(1, ago - around));
  }

  /** Makes {@code trial} what explains the readings best, and says how many scans ago it was. */
  private int lookBack(TrayObserver trial, int earliest, int latest) {
    int about = best(trial, earliest, latest, LOOK_EACH);
    int from = Math.min(earliest, about + LOOK_EACH - 1);
    // To the scan: half a second of a big pour is many times a reading's noise.
    int best = best(trial, from, Math.max(latest, about - LOOK_EACH + 1), 1);
    suppose(trial, best);
    if (trial == poured) {
      pouredK = Math.abs(poured.bathC() - before.bathC());
    }
    return best;
  }

  private int best(TrayObserver trial, int earliest, int latest, int step) {
    int best = earliest;
    double least = Double.POSITIVE_INFINITY;
    upToThen.copy(before);
    upToThen.judge();
    int then = sinceBefore;
    for (int ago = earliest; ago >= latest; ago -= step) {
      scans.replay(upToThen, then, ago); // what came before is the same for all
      then = ago;
      trial.copy(upToThen);
      supposeNow(trial, ago);
      if (trial.misfit() < least) {
        least = trial.misfit();
        best = ago;
      }
    }
    return best;
  }

  private void suppose(TrayObserver trial, int ago) {
    trial.copy(before);
    trial.judge();
    scans.replay(trial, sinceBefore, ago);
    supposeNow(trial, ago);
  }

  private void supposeNow(TrayObserver trial, int ago) {
    if (trial == poured) {
      trial.supposePoured(pouredK);
    } else {
      trial.supposeCovered();
    }
    scans.replay(trial, ago, 0);
  }
}
