package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/**
 * The contact test against a two-lump tray. That 250 W bend the plate by 3 K within 14.9 s and the
 * bath by 0.25 K within 24.7 s is row E9 of the reference tray's check values (recomputed there).
 */
class ContactWatchTest {

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void soundContactsAreFoundSoundEachHavingBeenClosedAloneFor25Seconds(boolean plateProbe) {
    PurgeBench bench = PurgeBench.reference(plateProbe);
    bench.run(10);
    bench.state = State.PURGING;
    int heater = 0;
    int safety = 0;
    for (int i = 0; i < 2000 && !bench.watch.sound(); i++) {
      heater += bench.watch.closes().equals(Optional.of(Relay.HEATER)) ? 1 : 0;
      safety += bench.watch.closes().equals(Optional.of(Relay.SAFETY)) ? 1 : 0;
      bench.scan();
    }
    assertTrue(bench.watch.sound());
    assertEquals(Optional.empty(), bench.watch.welded());
    assertEquals(250, heater, 1);
    assertEquals(250, safety, 1);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void aWeldedContactIsNamedWhileTheOtherRelayIsClosedAlone(boolean plateProbe) {
    for (Relay welded : Relay.values()) {
      PurgeBench bench = PurgeBench.reference(plateProbe);
      bench.heaterWelded = welded == Relay.HEATER;
      bench.safetyWelded = welded == Relay.SAFETY;
      double time = bench.purge(400);
      assertEquals(Optional.of(welded), bench.watch.welded());
      assertFalse(bench.watch.sound());
      assertEquals(Optional.empty(), bench.watch.closes(), "and nothing is closed any more");
      assertTrue(bench.plateC < 30, "heat that came through: " + bench.plateC);
      assertTrue(time < (plateProbe ? 120 : 240), time + " s");
    }
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void withAPlateProbeEveryTrayNamesItsWeldedContactWithinTwoMinutes() {
    List<String> wrong = new ArrayList<>();
    for (int seed = 0; seed < 60; seed++) {
      for (Relay welded : Relay.values()) {
        PurgeBench bench = PurgeBench.random(seed, true);
        bench.heaterWelded = welded == Relay.HEATER;
        bench.safetyWelded = welded == Relay.SAFETY;
        double time = bench.purge(400);
        if (!bench.watch.welded().equals(Optional.of(welded)) || time > 140) {
          wrong.add(seed + " " + welded + ": " + bench.watch.stage() + " after " + time);
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 3, 8, 15, 25, -10})
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void noSoundTrayIsAccusedHoweverHotItsPlateIsAtTheStart(double plateAboveK) {
    List<String> wrong = new ArrayList<>();
    for (int seed = 0; seed < 40; seed++) {
      PurgeBench bench = PurgeBench.random(seed, true).hot(plateAboveK);
      double time = bench.purge(900);
      if (!bench.watch.sound()) {
        wrong.add(seed + ": " + bench.watch.stage() + " after " + time);
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void noSoundTrayWithoutAPlateProbeIsAccused() {
    List<String> wrong = new ArrayList<>();
    for (int seed = 0; seed < 40; seed++) {
      PurgeBench bench = PurgeBench.random(seed, false);
      double time = bench.purge(900);
      if (!bench.watch.sound()) {
        wrong.add(seed + ": " + bench.watch.stage() + " after " + time);
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void withoutAPlateProbeAHotPlateIsWaitedForFiveMinutes() {
    PurgeBench bench = PurgeBench.reference(false);
    bench.watch = ContactWatch.start(true);
    double time = bench.purge(900);
    assertTrue(bench.watch.sound());
    assertTrue(time > 290 + 100, time + " s");
  }

  @Test
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void aBendThatDoesNotComeASecondTimeAccusesNobody() {
    for (boolean plateProbe : List.of(true, false)) {
      PurgeBench bench = PurgeBench.reference(plateProbe);
      bench.run(40);
      bench.state = State.PURGING;
      bench.safetyWelded = true;
      while (bench.watch.suspect().isEmpty()) {
        bench.scan();
      }
      assertEquals(Optional.of(Relay.SAFETY), bench.watch.suspect());
      assertEquals(Optional.empty(), bench.watch.welded(), "accused, not yet named");
      bench.safetyWelded = false;
      bench.purge(900);
      assertTrue(bench.watch.sound());
    }
  }

  @Test
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void coveringAWarmTrayDuringTheTestAccusesNobody() {
    PurgeBench bench = PurgeBench.reference(false);
    bench.bathC = 45;
    bench.plateC = 45;
    bench.lossWPerK = 8;
    bench.run(40);
    bench.state = State.PURGING;
    for (int i = 0; i < 1500 && !bench.watch.sound(); i++) {
      bench.lossWPerK = bench.watch.closes().isPresent() ? 0 : 8;
      bench.scan();
    }
    assertEquals(Optional.empty(), bench.watch.welded());
  }

  @ParameterizedTest
  @ValueSource(doubles = {40, 5})
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void aPourDuringTheTestBeginsItAnew(double pouredC) {
    PurgeBench bench = PurgeBench.reference(true);
    bench.run(30);
    bench.state = State.PURGING;
    bench.run(15);
    assertEquals(Optional.of(Relay.HEATER), bench.watch.closes());
    bench.bathC = pouredC;
    bench.run(15);
    assertEquals(Optional.empty(), bench.watch.closes());
    assertEquals(Optional.empty(), bench.watch.welded());
    double time = bench.purge(900);
    assertTrue(bench.watch.sound(), bench.watch.stage() + " after " + time);
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void leavingThePurgeEndsTheTestAndTheNextPurgeBeginsItAnew() {
    PurgeBench bench = PurgeBench.reference(true);
    bench.run(30);
    bench.state = State.PURGING;
    bench.run(10);
    assertEquals(Optional.of(Relay.HEATER), bench.watch.closes());
    bench.state = State.PROVING;
    bench.run(1);
    assertEquals(Optional.empty(), bench.watch.closes());
    bench.purge(200);
    assertTrue(bench.watch.sound());
    bench.state = State.HEATING;
    bench.run(1);
    assertFalse(bench.watch.sound(), "what was sound in one purge says nothing in the next");
  }
}
