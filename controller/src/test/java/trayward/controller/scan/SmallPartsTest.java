package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.port.LineReadings;
import trayward.controller.safety.Request;

/** Event box, host's pulse, timing and buttons, each alone. */
class SmallPartsTest {

  private static final long SECOND = 1_000_000_000L;

  @Test
  void anEventBoxNobodyEmptiesKeepsTheNewest4096AndCountsTheRest() {
    EventBox box = new EventBox();
    for (int i = 0; i < 5000; i++) {
      box.put(new TrayEvent(i, EventKind.NOTE, "", ""));
    }
    List<TrayEvent> events = box.take();
    assertEquals(4096, events.size());
    assertEquals(904, box.dropped());
    assertEquals(904, events.get(0).atNanos(), "the oldest went first");
    assertEquals(4999, events.get(4095).atNanos());
    assertEquals(List.of(), box.take());
  }

  @Test
  @Verifies(value = "SR-16", side = Side.WITHHOLDS)
  void aNumberThatStaysTheSameIsSilenceHoweverOftenItIsWritten() {
    HostPulse pulse = new HostPulse();
    pulse.beat(7);
    assertEquals(0, pulse.silentMs(5 * SECOND));
    for (int s = 6; s <= 65; s++) {
      pulse.beat(7);
      assertEquals((s - 5) * 1000, pulse.silentMs(s * SECOND));
    }
  }

  @Test
  @Verifies(value = "SR-16", side = Side.ALLOWS)
  void aNumberThatChangesUpOrDownIsALivingHost() {
    HostPulse pulse = new HostPulse();
    for (int s = 0; s < 100; s++) {
      pulse.beat(s % 3);
      assertEquals(0, pulse.silentMs(s * SECOND));
    }
  }

  @Test
  @Verifies(value = "SR-16", side = Side.WITHHOLDS)
  void aHostThatNeverSpokeIsSilentFromTheStart() {
    HostPulse pulse = new HostPulse();
    pulse.silentMs(0);
    assertEquals(60_000, pulse.silentMs(60 * SECOND));
    assertEquals(Integer.MAX_VALUE, pulse.silentMs(Long.MAX_VALUE));
  }

  @Test
  void latenessIsCountedAndBoundedAndNeverNegative() {
    ScanTiming timing = new ScanTiming();
    for (int i = 0; i < 998; i++) {
      timing.record(1_000_000);
    }
    timing.record(-5);
    timing.record(Long.MAX_VALUE);
    ScanTiming.Lateness lateness = timing.lateness();
    assertEquals(1000, lateness.scans());
    assertEquals(1.0, lateness.p50Ms(), 0.02);
    assertEquals(1.0, lateness.p999Ms(), 0.02);
    assertEquals(60_000, lateness.maxMs(), 600);
    assertEquals(1000, timing.lateness().scans(), "asking does not empty it");
  }

  private static LineReadings down(boolean reset, boolean presence, boolean pedal) {
    return new LineReadings(true, true, 1500, true, reset, presence, pedal);
  }

  private final Buttons buttons = new Buttons();

  private Set<Request> after(LineReadings... readings) {
    EnumSet<Request> requests = EnumSet.noneOf(Request.class);
    boolean pedal = false;
    for (LineReadings reading : readings) {
      requests.clear();
      pedal = buttons.pressed(reading, requests);
    }
    assertTrue(!pedal || requests.contains(Request.PRESENCE));
    return requests;
  }

  @Test
  void buttonsActOnceWhenTheyGoDown() {
    LineReadings up = down(false, false, false);
    assertEquals(Set.of(Request.RESET), after(up, down(true, false, false)));
    assertEquals(Set.of(), after(down(true, false, false)), "held is not pressed again");
    assertEquals(Set.of(Request.PRESENCE), after(up, down(false, true, false)));
    assertEquals(Set.of(Request.PRESENCE), after(up, down(false, false, true)));
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void whatIsDownAtPowerUpOrWhenTheInputsComeBackIsNoPress() {
    LineReadings all = down(true, true, true);
    assertEquals(Set.of(), after(all, all));
    assertEquals(Set.of(), after(LineReadings.ABSENT, all, all));
    assertFalse(after(down(false, false, false), all).isEmpty(), "a press after that is one");
  }

  private static final LineReadings UP = down(false, false, false);
  private static final LineReadings PEDAL = down(false, false, true);

  /** How often a press has grown long, with a scan every tenth of a second. */
  private int grownLong(LineReadings... readings) {
    int grown = 0;
    for (LineReadings reading : readings) {
      boolean pressed = buttons.pressed(reading, EnumSet.noneOf(Request.class));
      grown += buttons.grownLong(reading, pressed, scans++ * 100_000_000L) ? 1 : 0;
    }
    return grown;
  }

  private long scans = -3;

  private static LineReadings[] many(int count, LineReadings reading) {
    LineReadings[] readings = new LineReadings[count];
    Arrays.fill(readings, reading);
    return readings;
  }

  @Test
  void aPedalKeptDownForASecondIsALongPressOnceForEachPress() {
    assertEquals(0, grownLong(UP));
    assertEquals(0, grownLong(many(10, PEDAL)), "0.9 s after its press");
    assertEquals(1, grownLong(PEDAL));
    assertEquals(0, grownLong(many(50, PEDAL)));
    assertEquals(0, grownLong(UP));
    assertEquals(1, grownLong(many(20, PEDAL)));
  }

  @Test
  void aPressInTwoPartsIsNoLongOne() {
    assertEquals(0, grownLong(UP));
    assertEquals(0, grownLong(many(6, PEDAL)));
    assertEquals(0, grownLong(UP));
    assertEquals(0, grownLong(many(9, PEDAL)));
  }

  @Test
  void aPedalThatWasDownWhenTheInputsCameNeverGrowsLong() {
    assertEquals(0, grownLong(many(30, PEDAL)));
    assertEquals(0, grownLong(UP, PEDAL, LineReadings.ABSENT));
    assertEquals(0, grownLong(many(30, PEDAL)));
  }
}
