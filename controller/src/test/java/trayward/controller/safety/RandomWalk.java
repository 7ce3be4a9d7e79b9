package trayward.controller.safety;

import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;

/**
 * Inputs that wander: each is healthy most of the time, now and then wrong for a while. How often
 * differs from walk to walk, so that some reach heat again and again and others hardly once.
 */
final class RandomWalk {

  private static final Request[] REQUESTS = Request.values();
  private static final Proof[] WRONG = {Proof.ABSENT, Proof.UNSURE, Proof.PRESENT};
  private static final TripCause[] FINDINGS = {
    TripCause.HEAT_NOT_ARRIVING, TripCause.RELAY_STUCK, TripCause.TRAY_DRY
  };

  private final Random random;
  private final double faultsPerScan;
  private final int[] leftOf = new int[9];
  private double bathC = 20;
  private double plateOverK = 5;

  RandomWalk(long seed, Conditions c) {
    this.random = new Random(seed);
    this.faultsPerScan = new double[] {0.00005, 0.0004, 0.002, 0.01}[(int) (seed % 4)];
    if (random.nextInt(3) == 0) {
      c.second = Conditions.read(20);
    }
    if (random.nextInt(3) == 0) {
      c.plate = Temperature.NOT_FITTED;
    }
    if (random.nextInt(4) == 0) {
      c.tachometer = Proof.NOT_FITTED;
    }
    bathC = 10 + 35 * random.nextDouble();
  }

  /** Begins, goes on with, or ends the fault of one input. */
  private boolean wrong(int input) {
    if (leftOf[input] > 0) {
      leftOf[input]--;
    } else if (chance(faultsPerScan)) {
      leftOf[input] = (int) Math.pow(10, 3 * random.nextDouble()); // from one scan to 100 s
    }
    return leftOf[input] > 0;
  }

  private boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  private @Nullable Proof stuck(int input, @Nullable Proof now) {
    boolean before = leftOf[input] > 0;
    if (!wrong(input)) {
      return null;
    }
    return before && now != null ? now : WRONG[random.nextInt(WRONG.length)];
  }

  private Temperature probe(Temperature before, double celsius, boolean bad) {
    if (!before.fitted()) {
      return before;
    }
    return bad ? Conditions.bad(before) : Conditions.read(celsius);
  }

  /** Changes what the next scan will find. */
  void step(Conditions c) {
    c.airflow = stuck(0, c.airflow);
    if (c.tachometer != Proof.NOT_FITTED) {
      c.tachometer = stuck(1, c.tachometer);
    }
    c.lines = !wrong(2);
    c.circuit = c.lines && !wrong(3);
    if (!c.lines) {
      c.airflow = Proof.ABSENT;
    }
    temperatures(c);
    c.store = !wrong(7);
    c.hostSilentMs = wrong(8) ? c.hostSilentMs + Interlock.PERIOD_MS : 0;
    c.lateMs = chance(faultsPerScan) ? random.nextInt(1500) : 0;
    c.findings =
        chance(faultsPerScan / 4) ? Set.of(FINDINGS[random.nextInt(FINDINGS.length)]) : Set.of();
    c.atTray = chance(0.9);
    requests(c.asked);
  }

  private void temperatures(Conditions c) {
    bathC += 0.01 * (c.setC - bathC) + 0.05 * random.nextGaussian();
    if (chance(faultsPerScan / 2)) {
      bathC = 10 + 50 * random.nextDouble();
    }
    plateOverK += 0.02 * (5 - plateOverK) + 0.1 * random.nextGaussian();
    if (chance(faultsPerScan / 4)) {
      plateOverK = 60 * random.nextDouble();
    }
    if (chance(faultsPerScan / 2)) {
      c.setC = 15 + random.nextInt(36);
    }
    c.bath = probe(c.bath, bathC, wrong(4));
    c.second = probe(c.second, bathC + random.nextGaussian(), wrong(5));
    c.plate = probe(c.plate, bathC + plateOverK, wrong(6));
  }

  private void requests(EnumSet<Request> asked) {
    if (chance(0.05)) {
      asked.add(Request.START);
    }
    if (chance(0.02)) {
      asked.add(REQUESTS[random.nextInt(REQUESTS.length)]);
    }
    if (chance(0.05)) {
      asked.add(chance(0.5) ? Request.ACKNOWLEDGE : Request.RESET);
    }
    if (chance(0.999)) {
      asked.remove(Request.STOP);
    }
  }
}
