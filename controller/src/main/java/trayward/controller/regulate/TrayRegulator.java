package trayward.controller.regulate;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Holds a bath by a model of its tray that it learns while warming up: full heat until the coast
 * would peak at the set temperature, no heat until the plate has come down to what holds it, then a
 * cascade around that plate temperature. With a plate probe or, through the observer, without. A
 * plain PID stands by for a tray that the model cannot follow. Mutable; scan thread only.
 */
public final class TrayRegulator implements Regulator {

  /**
   * While learning, the coast is aimed under the set temperature by as much as a rising bath may be
   * hotter than its lagging probe lets know, but no further than this, K: half of the band.
   */
  private static final double MOST_BELOW_K = 0.1;

  /** From a hold, full heat where even a coast would end this far under the set temperature, K. */
  private static final double AGAIN_K = 0.25;

  /** Time constant of the way of what the bath settles at, s: two relay cycles. */
  private static final double HOLD_S = 10;

  /** Time in which the plate is brought to its ceiling, s: a relay cycle. */
  private static final double CEILING_S = 6;

  /** Readings this far from the model, K, mean of a minute: the model is lost. */
  private static final double LOST_K = 1;

  private static final double FOUND_K = 0.2;
  private static final double LOST_S = 60;

  private final TrayBelief prior;
  private final RoomModel room;
  private final double plateCeilingC;
  private final boolean plateFitted;
  private final WarmUpTutor tutor;
  private final PidRegulator plain;
  private @Nullable TrayFollower follower;
  private TrayBelief belief;
  private TrayPhase phase = TrayPhase.HOLD;
  private long bathNanos;
  private long plateNanos;
  private double offK;
  private double lagDoubtS;
  private boolean lost;

  /**
   * A regulator at rest.
   *
   * @param prior what is believed of the tray
   * @param doubt how unsure that is
   * @param room what is believed of the room
   * @param plateCeilingC plate temperature never asked for (SR-07), °C
   * @param plateFitted whether the plate has a probe
   * @param fits where fits are done
   */
  public TrayRegulator(
      TrayBelief prior,
      TrayDoubt doubt,
      RoomModel room,
      double plateCeilingC,
      boolean plateFitted,
      Fits fits) {
    this.prior = prior;
    this.belief = prior;
    this.room = room;
    this.plateCeilingC = plateCeilingC;
    this.plateFitted = plateFitted;
    this.tutor = new WarmUpTutor(prior, doubt, room, fits);
    this.plain = new PidRegulator(prior.model(), room, plateCeilingC);
  }

  /** What is believed of the tray now. */
  public TrayBelief belief() {
    return belief;
  }

  @Override
  public Optional<TrayLesson> lesson() {
    return Optional.ofNullable(tutor.lesson());
  }

  /** Whether the plain PID has taken over. */
  boolean lost() {
    return lost;
  }

  @Override
  public double duty(RegulatorInput in) {
    if (Double.isNaN(in.bathC()) || (plateFitted && Double.isNaN(in.plateC()))) {
      return 0;
    }
    TrayFollower f = follower;
    if (f == null) {
      f = new TrayFollower(prior, room, in.bathC(), in.plateC());
      follower = f;
      bathNanos = in.bathTakenNanos();
      plateNanos = in.plateTakenNanos();
    }
    follow(f, in);
    learn(f, in);
    TrayObserver o = f.now();
    HoldPoint at = HoldPoint.at(in.setC(), o);
    phase = next(at, o, in.setC());
    double byPid = plain.duty(in);
    return lost ? byPid : Math.max(0, Math.min(ceiling(o), ask(at, o)));
  }

  private void follow(TrayFollower f, RegulatorInput in) {
    boolean newBath = in.bathTakenNanos() != bathNanos;
    boolean newPlate = plateFitted && in.plateTakenNanos() != plateNanos;
    bathNanos = in.bathTakenNanos();
    plateNanos = in.plateTakenNanos();
    f.scan(
        in.elapsedS(),
        in.heating() ? 1 : 0,
        in.nowNanos(),
        newBath ? in.bathC() : Double.NaN,
        bathNanos,
        newPlate ? in.plateC() : Double.NaN,
        plateNanos);
    tutor.see(in, newBath, newPlate);
    double off = Math.abs(in.bathC() - f.now().bathSensedC());
    offK += (off - offK) * Math.min(1, in.elapsedS() / LOST_S);
    lost = lost ? offK > FOUND_K : offK > LOST_K;
  }

  private void learn(TrayFollower f, RegulatorInput in) {
    FitResult found = tutor.take();
    if (found != null) {
      belief = found.belief();
      lagDoubtS = found.doubt().bathLag() * belief.bathLagS();
      f.believe(belief, room, found.run(), found.doubt().bathLag());
    }
    tutor.begin(in, f.now());
    if (f.poured()) {
      tutor.disturbed();
    }
    tutor.ask(phase);
  }

  private TrayPhase next(HoldPoint at, TrayObserver o, double setC) {
    double peakC = at.coastPeakC(o.plateC(), o.bathC());
    boolean isShort = peakC < setC - AGAIN_K;
    return switch (phase) {
      case FULL -> peakC >= setC - belowK(o) ? TrayPhase.COAST : TrayPhase.FULL;
      case COAST ->
          isShort
              ? TrayPhase.FULL
              : at.settlingK(o.plateC(), o.bathC()) <= 0 ? TrayPhase.HOLD : TrayPhase.COAST;
      case HOLD -> isShort ? TrayPhase.FULL : TrayPhase.HOLD;
    };
  }

  private double belowK(TrayObserver o) {
    return tutor.learning()
        ? Math.max(0, Math.min(MOST_BELOW_K, lagDoubtS * o.bathRateKPerS()))
        : 0;
  }

  private double ask(HoldPoint at, TrayObserver o) {
    return switch (phase) {
      case FULL -> 1;
      case COAST -> 0;
      case HOLD -> at.dutyFor(at.settlingK(o.plateC(), o.bathC()), HOLD_S);
    };
  }

  /** Highest duty that brings the plate to its ceiling without passing it. */
  private double ceiling(TrayObserver o) {
    TrayRates r = o.rates();
    double rate = (plateCeilingC - o.plateC()) / CEILING_S;
    double steady = r.plateRate(0, o.plateC(), o.bathC()) + o.plateExtra();
    return Math.max(0, Math.min(1, (rate - steady) / r.heatKPerS()));
  }
}
