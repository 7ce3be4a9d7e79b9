package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.safety.Bench;
import trayward.controller.safety.Permission;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;

/** SR-01: the heater relay closes on nothing but a permit of this very scan. */
class HeaterGateTest {

  private final List<Boolean> written = new ArrayList<>();
  private final HeaterGate gate = new HeaterGate(written::add);
  private final Bench bench = Bench.in(State.HEATING);

  @Test
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  @Verifies(value = "SR-25", side = Side.ALLOWS)
  void aPermitOfThisScanClosesTheRelayWhenHeatIsWanted() {
    Permission permit = bench.scan().permission();
    assertTrue(gate.drive(permit, bench.scanNumber(), true));
    assertFalse(gate.drive(permit, bench.scanNumber(), false));
    assertEquals(List.of(true, false), written);
  }

  @Test
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  void aPermitKeptFromAnEarlierScanIsWorthNothing() {
    Permission kept = bench.scan().permission();
    bench.scan();
    assertFalse(gate.drive(kept, bench.scanNumber(), true));
    assertFalse(gate.drive(kept, bench.scanNumber() - 2, true));
    assertEquals(List.of(false, false), written);
  }

  @Test
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  @Verifies(value = "SR-25", side = Side.WITHHOLDS)
  void withoutAPermitTheRelayIsOpenedWhateverIsWanted() {
    Permission withheld = bench.ask(Request.STOP).scan().permission();
    assertFalse(gate.drive(withheld, bench.scanNumber(), true));
    gate.open();
    assertEquals(List.of(false, false), written);
  }
}
