package trayward.host.app.campaign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import trayward.controller.event.TripCause;
import trayward.controller.sim.SimFault;

/** The tables of the oracle are whole. */
class FaultKindTest {

  @Test
  void everyFaultOfTheSimulationAndOfTheComputerIsTried() {
    Set<String> words =
        Arrays.stream(SimFault.values())
            .map(SimFault::words)
            .collect(Collectors.toCollection(TreeSet::new));
    words.addAll(Set.of("host-lost", "scan-stall", "wall-clock-step"));
    Set<String> tried =
        Arrays.stream(FaultKind.values())
            .map(FaultKind::words)
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(words, tried);
  }

  /** STORE_FAILED has no fault in a scenario; every other cause is the truth about something. */
  @Test
  void everyCauseIsTheTruthAboutSomeFaultAndHasAReason() {
    Set<TripCause> explained = EnumSet.noneOf(TripCause.class);
    for (FaultKind kind : FaultKind.values()) {
      for (Explains explains : kind.explains()) {
        explained.add(explains.cause());
        assertFalse(explains.reason().isBlank(), kind.words());
      }
    }
    assertEquals(EnumSet.complementOf(EnumSet.of(TripCause.STORE_FAILED)), explained);
  }
}
