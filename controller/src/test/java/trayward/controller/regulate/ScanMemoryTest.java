package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScanMemoryTest {

  private static TrayObserver fresh() {
    return new TrayObserver(Believed.REFERENCE, Believed.ROOM, 30, 60);
  }

  private static void same(TrayObserver a, TrayObserver b) {
    assertEquals(a.plateC(), b.plateC(), 0);
    assertEquals(a.bathC(), b.bathC(), 0);
    assertEquals(a.bathSensedC(), b.bathSensedC(), 0);
    assertEquals(a.plateExtra(), b.plateExtra(), 0);
  }

  /** Scan i of 0.1 s, every tenth with readings. */
  private static double step(TrayObserver o, int i) {
    long now = i * 100_000_000L;
    o.advance(0.1, i % 3 == 0 ? 1 : 0, now);
    double scaled = 0;
    if (i % 10 == 0) {
      scaled = o.bath(30 + i / 100.0, now);
      o.plate(60 - i / 50.0, now);
    }
    return scaled;
  }

  private static ScanMemory memory(int size, int scans) {
    ScanMemory memory = new ScanMemory(size);
    for (int i = 1; i <= scans; i++) {
      boolean reads = i % 10 == 0;
      long now = i * 100_000_000L;
      memory.put(
          0.1,
          i % 3 == 0 ? 1 : 0,
          now,
          reads ? 30 + i / 100.0 : Double.NaN,
          now,
          reads ? 60 - i / 50.0 : Double.NaN,
          now);
    }
    return memory;
  }

  @Test
  void whatIsRunThroughAgainComesOutTheSame() {
    TrayObserver lived = fresh();
    double scaled = 0;
    for (int i = 1; i <= 100; i++) {
      double now = step(lived, i);
      scaled = i % 10 == 0 ? now : scaled;
    }
    TrayObserver again = fresh();
    assertEquals(scaled, memory(400, 100).replay(again, 100, 0), 0);
    same(lived, again);
  }

  @Test
  void itCanBeRunInTwoParts() {
    ScanMemory memory = memory(400, 100);
    TrayObserver once = fresh();
    memory.replay(once, 80, 0);
    TrayObserver twice = fresh();
    memory.replay(twice, 80, 35);
    memory.replay(twice, 35, 0);
    same(once, twice);
  }

  /** Of 137 scans a memory of 50 has the last 50, whatever is asked for. */
  @ParameterizedTest
  @ValueSource(ints = {50, 51, 1000})
  void onlyTheLastScansAreRemembered(int from) {
    TrayObserver again = fresh();
    memory(50, 137).replay(again, from, 0);
    TrayObserver lived = fresh();
    for (int i = 88; i <= 137; i++) {
      step(lived, i);
    }
    same(lived, again);
  }
}
