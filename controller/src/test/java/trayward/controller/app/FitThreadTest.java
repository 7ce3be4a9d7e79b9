package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import trayward.controller.regulate.FitJob;
import trayward.controller.regulate.FitResult;
import trayward.controller.regulate.Fits;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.RegulatorInput;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayBelief;
import trayward.controller.regulate.TrayDoubt;
import trayward.controller.regulate.TrayModel;
import trayward.controller.regulate.TrayRegulator;

/** Fits on their own thread. Waits are bounded by the time-out and are no claim about time. */
@Timeout(60)
class FitThreadTest {

  /** Keeps the job asked for. */
  private static final class Keeper implements Fits {
    @Nullable FitJob job;

    @Override
    public boolean ask(FitJob asked) {
      job = asked;
      return true;
    }

    @Override
    public @Nullable FitResult take() {
      return null;
    }
  }

  /**
   * What a regulator asks for after a warm-up of {@code seconds}, by readings of a made-up rise.
   */
  private static FitJob job(int seconds) {
    Keeper keeper = new Keeper();
    Regulator regulator =
        new TrayRegulator(
            TrayBelief.declared(TrayModel.REFERENCE),
            TrayDoubt.DECLARED,
            RoomModel.REFERENCE,
            68,
            true,
            keeper);
    for (int s = 0; s <= seconds; s++) {
      long at = s * 1_000_000_000L;
      double bathC = 20 + 0.01 * s;
      double plateC = bathC + 12 * -Math.expm1(-s / 48.0);
      regulator.duty(new RegulatorInput(1, 90, bathC, at, plateC, at, true, s % 5 < 3, at));
    }
    FitJob job = keeper.job;
    assertNotNull(job);
    return job;
  }

  private static FitResult await(FitThread fits) {
    FitResult result = fits.take();
    while (result == null) {
      Thread.onSpinWait();
      result = fits.take();
    }
    return result;
  }

  @Test
  void aResultComesOnceAndIsThatOfTheJob() {
    FitJob job = job(60);
    try (FitThread fits = new FitThread()) {
      assertNull(fits.take());
      assertTrue(fits.ask(job));
      FitResult result = await(fits);
      assertSame(job, result.job());
      assertEquals(job.run().belief(), result.belief());
      assertNull(fits.take());
    }
  }

  /** A second ask is either refused or comes after the first is done. */
  @Test
  void anAskWhileOneIsUnderWayIsRefused() {
    FitJob job = job(2000);
    int refused = 0;
    try (FitThread fits = new FitThread()) {
      for (int i = 0; i < 10; i++) {
        while (!fits.ask(job)) {
          Thread.onSpinWait();
        }
        boolean second = fits.ask(job);
        refused += second ? 0 : 1;
        assertTrue(!second || fits.take() != null, "two at once");
        await(fits);
      }
    }
    assertTrue(refused > 0, "never refused");
  }

  /** The failure is told by the thread's end alone; the next fit is done all the same. */
  @Test
  void afterAFitThatFailsTheNextIsDone() {
    FitJob good = job(60);
    FitJob bad =
        new FitJob(
            good.view(),
            good.room(),
            new TrayBelief(TrayModel.REFERENCE, Double.NaN, Double.NaN, Double.NaN),
            good.doubt(),
            Double.NaN,
            Double.NaN,
            good.from());
    try (FitThread fits = new FitThread()) {
      assertTrue(fits.ask(bad));
      while (!fits.ask(good)) {
        Thread.onSpinWait();
      }
      FitResult result = await(fits);
      while (!(result.rmsK() < 0.5)) { // numbers that are none: refused by whoever takes it
        result = await(fits);
      }
      assertSame(good, result.job());
    }
  }

  @Test
  void closingEndsTheThread() throws InterruptedException {
    Set<Thread> before = new HashSet<>(Thread.getAllStackTraces().keySet());
    FitThread fits = new FitThread();
    assertTrue(fits.ask(job(60)));
    Set<Thread> mine = new HashSet<>(Thread.getAllStackTraces().keySet());
    mine.removeAll(before);
    mine.removeIf(thread -> !thread.getName().equals("fits"));
    fits.close();
    for (Thread thread : mine) {
      assertTrue(thread.isDaemon());
      thread.join(30_000);
      assertFalse(thread.isAlive());
    }
    assertEquals(1, mine.size());
  }
}
