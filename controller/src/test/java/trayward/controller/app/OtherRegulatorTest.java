package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import trayward.controller.event.TrayEvent;
import trayward.controller.regulate.PidRegulator;
import trayward.controller.regulate.TrayRegulator;
import trayward.controller.sim.Plant;

/** A rehearsal with another regulator than its scenario names. */
class OtherRegulatorTest {

  private static final String START = "duration_s = 300\n[[at]]\nt_s = 0\ndo = 'start'\n";

  /** Keeps what the heater did. */
  private static final class Heat implements Rehearsal.Listener {
    private final List<Double> watts = new ArrayList<>();

    @Override
    public void row(RehearsalRow row) {
      watts.add(row.heatW());
    }

    @Override
    public void event(double tS, TrayEvent event) {}

    @Override
    public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {}

    @Override
    public boolean wantsBounds() {
      return false;
    }
  }

  private static Scenario scenario(String more) throws ConfigRefused {
    return Scenario.parse("other", START + more);
  }

  @Test
  void theOtherRegulatorIsAskedAndTheInterlockStillDecides() throws ConfigRefused {
    Heat none = new Heat();
    new Rehearsal(scenario(""), none, s -> in -> 0).run();
    assertTrue(none.watts.stream().allMatch(w -> w == 0));
    Heat all = new Heat();
    new Rehearsal(scenario(""), all, s -> in -> 1).run();
    assertEquals(250, all.watts.get(all.watts.size() - 1));
    assertTrue(all.watts.stream().limit(600).allMatch(w -> w == 0), "no heat before the purge");
  }

  @Test
  void withoutOneItIsTheNamedOne() throws ConfigRefused {
    assertTrue(
        Rehearsal.regulator(scenario("[control]\nregulator = 'pid'\n")) instanceof PidRegulator);
    assertTrue(Rehearsal.regulator(scenario("")) instanceof TrayRegulator);
  }

  @Test
  void lookingAheadLeavesTheTruthAlone() throws ConfigRefused {
    Rehearsal rehearsal = new Rehearsal(scenario(""), new Heat());
    Plant ahead = rehearsal.plantNow();
    ahead.pour(1, 60);
    assertEquals(20, rehearsal.plantNow().bathC());
  }
}
