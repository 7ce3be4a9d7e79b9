package trayward.controller.regulate;

/**
 * One PID on the bath, tuned by SIMC from what is believed of the tray. Runs once for each new bath
 * sample; holds its output between them. Mutable; scan thread only.
 *
 * <p>The integral part starts at the duty the believed tray needs to hold the set temperature, and
 * waits while heat is withheld, so that heat starts again where it would have been.
 */
public final class PidRegulator implements Regulator {

  /**
   * Delay seen from the relay, s: a reading is 0.75 s old (12-bit conversion), waits half a second
   * for its sample on average, and half the relay's cycle passes before a pulse is felt.
   */
  private static final double DELAY_S = 3.75;

  /** Lag of a bath probe in its sheath, s; by SIMC's half rule half of it counts as delay. */
  private static final double PROBE_LAG_S = 5;

  /** Longest closed-loop time asked for, s: five delays leave the loop a sensitivity below 1.6. */
  private static final double CLOSED_S = 32;

  /** Shortest: two delays, for small trays that would otherwise creep. */
  private static final double CLOSED_DELAYS = 2;

  /** Gain beyond which the 1/16 K steps of a reading would shake the duty, duty per K. */
  private static final double CALM_GAIN = 0.5;

  /** Derivative filter ratio: a small N, because a reading is rounded to 1/16 K. */
  private static final double FILTER = 3;

  /** Below this plate temperature nothing is held back; K under the plate's ceiling. */
  private static final double PLATE_BAND_K = 3;

  /** A bath faster than this is on its way, and the integral part waits, K/s: 0.24 K/min. */
  private static final double MOVING_K_PER_S = 0.004;

  /** The integral part waits further from set than this, K. */
  private static final double WINDOW_K = 1;

  /** How wrong the believed hold duty may be; proportional action alone is off by it over K. */
  private static final double HOLD_DOUBT = 0.5;

  /** A sample gap outside of this is treated as its end, s: probes deliver about once a second. */
  private static final double MIN_SAMPLE_S = 0.05;

  private static final double MAX_SAMPLE_S = 5;

  private final TrayModel model;
  private final RoomModel room;
  private final double plateCeilingC;
  private PidGains gains;
  private Pid pid;
  private double setC = Double.NaN;
  private long sampleNanos;
  private boolean running;
  private double duty;

  /**
   * A regulator at rest.
   *
   * @param model what is believed of the tray
   * @param room what is believed of the room
   * @param plateCeilingC plate temperature never asked for (SR-07), °C
   */
  public PidRegulator(TrayModel model, RoomModel room, double plateCeilingC) {
    this.model = model;
    this.room = room;
    this.plateCeilingC = plateCeilingC;
    this.gains = gainsAt(40);
    this.pid = Pid.start(0);
  }

  /** The settings in force. */
  public PidGains gains() {
    return gains;
  }

  @Override
  public double duty(RegulatorInput in) {
    if (in.setC() != setC) {
      takeSet(in.setC());
    }
    if (Double.isNaN(in.bathC())) {
      running = false;
      duty = 0;
      return duty;
    }
    // Above set heat is withheld because of the bath itself: the controller goes on, or its
    // integral
    // part would stay as high as what brought the bath there.
    if (!in.heatAllowed() && in.bathC() <= setC) {
      running = false;
      duty = firstAsk(in);
      return duty;
    }
    if (!running || in.bathTakenNanos() != sampleNanos) {
      sample(in);
    }
    return duty;
  }

  /** While heat is withheld the demand shown is what would be asked: nothing moves inside. */
  private double firstAsk(RegulatorInput in) {
    double v = gains.gain() * (gains.weight() * setC - in.bathC()) + pid.integral();
    return Math.max(0, Math.min(ceiling(in.plateC()), v));
  }

  private void sample(RegulatorInput in) {
    double h = (in.bathTakenNanos() - sampleNanos) / 1e9;
    if (!running) {
      pid = Pid.start(pid.integral());
      h = 1;
    }
    h = Math.max(MIN_SAMPLE_S, Math.min(MAX_SAMPLE_S, h));
    Pid.Step step = pid.step(gains, setC, in.bathC(), h, 0, ceiling(in.plateC()));
    double movingDuty = MOVING_K_PER_S * gains.gain() * gains.derivativeS();
    boolean moving = Math.abs(step.next().derivative()) > movingDuty;
    boolean far = Math.abs(setC - in.bathC()) > Math.max(WINDOW_K, HOLD_DOUBT / gains.gain());
    // A long warm-up must not wind up the integral part. Neither condition can last: at rest the
    // derivative is nil, and the window is wider than the offset proportional action can leave.
    pid =
        moving || far ? new Pid(pid.integral(), step.next().derivative(), in.bathC()) : step.next();
    duty = step.given();
    sampleNanos = in.bathTakenNanos();
    running = true;
  }

  private void takeSet(double newSetC) {
    PidGains to = gainsAt(newSetC);
    // What was learned of this tray at the old set temperature stands at the new one.
    double learned = Double.isNaN(setC) ? 0 : pid.integral() - rest(gains, setC);
    pid = new Pid(rest(to, newSetC) + learned, pid.derivative(), pid.measuredC());
    gains = to;
    setC = newSetC;
  }

  /** v = K (b r - y) + I rests at y = r with I = hold + K (1 - b) r. */
  private double rest(PidGains at, double restC) {
    double hold = Math.min(1, Math.max(0, model.holdDuty(restC, room)));
    return hold + at.gain() * (1 - at.weight()) * restC;
  }

  /** Highest duty that keeps the plate under its ceiling, falling over the last few kelvin. */
  private double ceiling(double plateC) {
    return Double.isNaN(plateC)
        ? 1
        : Math.max(0, Math.min(1, (plateCeilingC - plateC) / PLATE_BAND_K));
  }

  private PidGains gainsAt(double celsius) {
    TrayModel.Linear linear = model.linearAt(celsius, room);
    double fast = linear.fastS() + PROBE_LAG_S / 2;
    double delay = DELAY_S + PROBE_LAG_S / 2;
    double calm = linear.slowS() / (linear.gainKPerDuty() * CALM_GAIN) - delay;
    double closed = Math.min(CLOSED_S, Math.max(CLOSED_DELAYS * delay, calm));
    Simc.Series ideal =
        Simc.tune(linear.gainKPerDuty(), linear.slowS(), fast, delay, closed).ideal();
    return new PidGains(
        ideal.gain(), ideal.integralS(), ideal.derivativeS(), FILTER, 1.0, ideal.integralS());
  }
}
