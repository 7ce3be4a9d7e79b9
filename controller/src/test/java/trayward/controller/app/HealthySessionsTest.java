package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/**
 * Healthy trays of every kind the design names, two hours each with pours, sheets, covers, set
 * changes and restarts; a quarter of them small trays told only by watts and litres. A bath made
 * too hot by a person's own hot pour is no false trip. More with {@code -Dtrayward.sessions=1000}.
 */
class HealthySessionsTest {

  private static final int SESSIONS = Integer.getInteger("trayward.sessions", 30);

  @Test
  @Verifies(value = "SR-07", side = Side.ALLOWS)
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void noHealthySessionWithAPlateProbeTripsTheWatch() throws ConfigRefused {
    assertEquals(List.of(), falseTrips(true));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void noHealthySessionWithoutOneTripsTheWatch() throws ConfigRefused {
    assertEquals(List.of(), falseTrips(false));
  }

  private static List<String> falseTrips(boolean plate) throws ConfigRefused {
    List<String> all = new ArrayList<>();
    int heated = 0;
    for (int seed = 0; seed < SESSIONS; seed++) {
      HeatRun run = HeatRun.of(RandomSession.toml(seed, plate));
      for (String trip : run.trips()) {
        if (!trip.equals("BATH_TOO_HOT")) {
          all.add("seed " + seed + ": " + trip);
        }
      }
      heated += run.heatedS() > 300 ? 1 : 0;
    }
    assertTrue(heated > SESSIONS * 0.8, "sessions that heated at all: " + heated);
    return all;
  }

  /** A hot pour under full heat levelled off and was once taken for a frozen probe. */
  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aHotPourThatLevelsOffUnderFullHeatIsNoFrozenProbe() throws ConfigRefused {
    assertEquals(List.of(), HeatRun.of(RandomSession.toml(903, true)).trips());
  }
}
