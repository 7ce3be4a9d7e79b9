package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.safety.State;

/** SR-17: whatever escapes a scan ends the loop with outputs off and is told. */
class ScanLoopFailureTest {

  private final AtomicReference<@Nullable Throwable> failure = new AtomicReference<>();
  private final AtomicInteger failures = new AtomicInteger();
  private final CountDownLatch failed = new CountDownLatch(1);

  private void onFailure(Throwable escaped) {
    failure.set(escaped);
    failures.incrementAndGet();
    failed.countDown();
  }

  /** A clock that is a period further each time it is read, so that a scan is always due. */
  private static AtomicLong from(Deck deck) {
    return new AtomicLong(deck.now);
  }

  @ParameterizedTest
  @EnumSource(Deck.Part.class)
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aPartThatThrowsEndsTheLoopWithHeatOffAndTheWatchdogSilent(Deck.Part part) throws Exception {
    Deck deck = Deck.heating();
    while (!deck.heater.active) {
      deck.scan();
    }
    int toggles = deck.watchdog.changes;
    AtomicLong clock = from(deck);
    deck.broken = part;
    ScanLoop loop =
        new ScanLoop(deck.scan, () -> clock.addAndGet(Deck.PERIOD), this::onFailure, () -> {});
    loop.start();
    assertTrue(failed.await(10, TimeUnit.SECONDS), "the failure was not told");
    loop.close();
    assertInstanceOf(IllegalStateException.class, failure.get());
    assertEquals(1, failures.get());
    assertEquals(toggles, deck.watchdog.changes);
    deck.tray.advanceTo(clock.get() + 2_000_000_000L);
    assertEquals(0, deck.tray.heatW());
    assertTrue(part == Deck.Part.HEATER || !deck.heater.active);
    assertTrue(part == Deck.Part.SAFETY || !deck.safety.active);
    assertTrue(part == Deck.Part.BUZZER || !deck.buzzer.active);
    assertTrue(part == Deck.Part.LAMP || !deck.lamp.active);
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void anErrorEndsTheLoopLikeAnException() throws Exception {
    Deck deck = Deck.heating();
    deck.lines =
        in -> {
          throw new StackOverflowError("an error, not an exception");
        };
    AtomicLong clock = from(deck);
    ScanLoop loop =
        new ScanLoop(deck.scan, () -> clock.addAndGet(Deck.PERIOD), this::onFailure, () -> {});
    loop.start();
    assertTrue(failed.await(10, TimeUnit.SECONDS));
    loop.close();
    assertInstanceOf(StackOverflowError.class, failure.get());
    assertFalse(deck.heater.active || deck.safety.active);
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aClockThatThrowsEndsTheLoopToo() throws Exception {
    Deck deck = Deck.heating();
    ScanLoop loop =
        new ScanLoop(
            deck.scan,
            () -> {
              throw new IllegalStateException("no time");
            },
            this::onFailure,
            () -> {});
    loop.start();
    assertTrue(failed.await(10, TimeUnit.SECONDS));
    loop.close();
    assertFalse(deck.heater.active || deck.safety.active);
  }

  @Test
  @Verifies(value = "SR-17", side = Side.ALLOWS)
  void aHealthyLoopScansPublishesAndEndsWithHeatOff() throws Exception {
    Deck deck = Deck.heating();
    CountDownLatch first = new CountDownLatch(1);
    CountDownLatch many = new CountDownLatch(200);
    deck.lines =
        in -> {
          many.countDown();
          return in;
        };
    AtomicLong clock = from(deck);
    ScanLoop loop =
        new ScanLoop(
            deck.scan, () -> clock.addAndGet(Deck.PERIOD), this::onFailure, first::countDown);
    loop.start();
    assertTrue(first.await(10, TimeUnit.SECONDS));
    assertTrue(many.await(10, TimeUnit.SECONDS));
    Snapshot snapshot = loop.latest();
    assertTrue(snapshot != null && snapshot.state() == State.HEATING);
    loop.close();
    assertEquals(0, failures.get());
    assertFalse(deck.heater.active || deck.safety.active);
    assertTrue(deck.fan.active, "SR-20: the fan's line stays as it was");
    assertTrue(loop.timing().lateness().scans() >= 200);
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aScanThatCameLateIsNotMadeUpForByAHurryOfOthers() throws Exception {
    Deck deck = new Deck();
    AtomicLong clock = new AtomicLong();
    AtomicLong previous = new AtomicLong(Long.MIN_VALUE / 2);
    AtomicLong shortest = new AtomicLong(Long.MAX_VALUE);
    CountDownLatch many = new CountDownLatch(8);
    deck.lines =
        in -> {
          long now = clock.get();
          shortest.accumulateAndGet(now - previous.getAndSet(now), Math::min);
          if (many.getCount() == 5) {
            clock.addAndGet(5_000_000_000L); // the program stalls in this scan
          }
          many.countDown();
          return in;
        };
    ScanLoop loop =
        new ScanLoop(deck.scan, () -> clock.addAndGet(20_000_000L), this::onFailure, () -> {});
    loop.start();
    assertTrue(many.await(20, TimeUnit.SECONDS));
    loop.close();
    assertTrue(shortest.get() > Deck.PERIOD / 2, "two scans " + shortest.get() + " ns apart");
  }
}
