package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The probe in the hand. */
class WarmProbeTest {

  private static final long SECOND = 1_000_000_000L;

  private WarmProbe warm = WarmProbe.START;

  private Optional<WarmProbe.Named> after(double seconds, Map<String, Double> celsius) {
    warm = warm.next(celsius, (long) (seconds * SECOND));
    return warm.found();
  }

  @Test
  void theOneThatRisesIsNamedOnceItHasLedForTwoSeconds() {
    assertTrue(after(0, Map.of("a", 20.0, "b", 21.0, "c", 30.0)).isEmpty());
    assertTrue(after(5, Map.of("a", 20.1, "b", 21.9, "c", 30.0)).isEmpty(), "0.9 K is too little");
    assertTrue(after(6, Map.of("a", 20.1, "b", 22.0, "c", 30.0)).isEmpty(), "just now");
    assertTrue(after(7.9, Map.of("a", 20.2, "b", 22.5, "c", 30.0)).isEmpty());
    assertEquals(
        Optional.of(new WarmProbe.Named("b", 2.0, 0.25)),
        after(8, Map.of("a", 20.25, "b", 23.0, "c", 30.0)));
  }

  @Test
  void twoThatRiseAlikeAreNotToldApart() {
    after(0, Map.of("a", 20.0, "b", 20.0));
    for (int s = 1; s <= 60; s++) {
      assertTrue(after(s, Map.of("a", 20 + 0.1 * s, "b", 20 + 0.06 * s)).isEmpty(), "second " + s);
    }
  }

  @Test
  void theNextMayRiseHalfAsFarAndNoMore() {
    after(0, Map.of("a", 20.0, "b", 20.0));
    after(1, Map.of("a", 24.0, "b", 22.0));
    assertTrue(after(3, Map.of("a", 24.0, "b", 22.0)).isPresent());
    assertTrue(after(4, Map.of("a", 24.0, "b", 22.0625)).isEmpty());
  }

  @Test
  void aWarmRoomIsNoHandAndACoolingProbeIsNone() {
    after(0, Map.of("a", 20.0, "b", 40.0));
    for (int s = 1; s <= 100; s++) {
      assertTrue(after(s, Map.of("a", 20 + 0.009 * s, "b", 40 - 0.1 * s)).isEmpty());
    }
  }

  @Test
  void theSecondsCountFromWhenTheSameOneLeads() {
    after(0, Map.of("a", 20.0, "b", 20.0));
    after(1, Map.of("a", 22.0, "b", 20.0));
    assertTrue(after(2, Map.of("a", 22.0, "b", 25.0)).isEmpty(), "now the other one");
    assertTrue(after(3.9, Map.of("a", 22.0, "b", 25.0)).isEmpty());
    assertEquals("b", after(4, Map.of("a", 22.0, "b", 25.0)).orElseThrow().name());
  }

  @Test
  void aProbeThatComesLaterStartsWhereItIsAndOneThatGoesKeepsWhatItHad() {
    after(0, Map.of("a", 20.0));
    assertTrue(after(10, Map.of("a", 20.0, "b", 35.0)).isEmpty());
    after(11, Map.of("b", 35.0));
    after(12, Map.of("b", 36.5));
    assertEquals(
        Optional.of(new WarmProbe.Named("b", 1.5, 0)), after(14, Map.of("a", 20.0, "b", 36.5)));
  }

  @Test
  void withoutAReadingNothingIsNamed() {
    assertTrue(after(0, Map.of()).isEmpty());
    assertTrue(after(10, Map.of()).isEmpty());
  }
}
