package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.safety.Level;

/** The level of liquid in whole rehearsals (SR-28). */
class LevelSessionsTest {

  /** More are run with {@code -Dtrayward.sessions=500}. */
  private static final int SESSIONS = Integer.getInteger("trayward.sessions", 5);

  /** Half of the share that warns: evaporation may be half of the correlation. */
  private static final double LOST_LOW = 0.15 / 2;

  private static final double LOST_UNSURE = 0.5 / 2;

  private static String half(String tray, int atS, String more) {
    return """
        seed = 3
        duration_s = 900
        [tray]
        %s
        [control]
        set_c = 45
        [[at]]
        t_s = 0
        do = "start"
        [[fault]]
        t_s = %d
        kind = "tray-half-empty"
        %s
        """
        .formatted(tray, atS, more);
  }

  @ParameterizedTest
  @CsvSource({"heater_w=250, 300", "heater_w=400, 260", "heater_w=400, 350", "heater_w=150, 350"})
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void aTrayHalfEmptiedInAWarmUpWithholdsHeatByItsHeatingRate(String tray, int atS)
      throws ConfigRefused {
    LevelRun run = LevelRun.of(half(tray, atS, ""));
    assertTrue(run.unsureAtS() > atS && run.unsureAtS() <= atS + 110, "at " + run.unsureAtS());
    assertEquals(0, run.heatWhileUnsureS(), 1e-9);
    assertEquals(Level.UNSURE, run.estimate().level());
    assertEquals(0.5, run.estimate().litres(), 0.07);
  }

  @ParameterizedTest
  @CsvSource({"250, 250", "230, 350"})
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void aTrayHalfEmptiedInAWarmUpWarnsAtLeast(int watts, int atS) throws ConfigRefused {
    LevelRun run = LevelRun.of(half("heater_w=" + watts, atS, ""));
    assertTrue(run.lowAtS() > atS && run.lowAtS() <= atS + 110, "at " + run.lowAtS());
    assertTrue(run.estimate().addL() > 0.3, "to add " + run.estimate().addL());
  }

  @Test
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void aConfirmedLevelGivesHeatBackAndIsBelieved() throws ConfigRefused {
    String confirmed =
        half(
            "heater_w=400",
            350,
            """
            [[at]]
            t_s = 500
            do = "confirm-level"
            litres = 0.5
            [[at]]
            t_s = 700
            do = "set-temperature"
            celsius = 48
            """);
    LevelRun run = LevelRun.of(confirmed);
    assertTrue(run.unsureAtS() < 500, "at " + run.unsureAtS());
    assertEquals(Level.WELL, run.estimate().level());
    assertTrue(run.heatedAfterS(501) > 10, "heat after the confirmation");
  }

  /** Reference tray: 67 mL an hour at 40 °C, so that two hours lose less than the warning. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 2})
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void twoHoursAtFortyDegreesNeverWithholdHeatHoweverStrongTheEvaporation(double factor)
      throws ConfigRefused {
    LevelRun run =
        LevelRun.of(
            "duration_s=7200\n[tray]\nevaporation_factor="
                + factor
                + "\n[[at]]\nt_s=0\ndo=\"start\"\n");
    assertEquals(Double.POSITIVE_INFINITY, run.unsureAtS());
    assertEquals(Double.POSITIVE_INFINITY, run.lowAtS());
    assertEquals(0, run.outsideS(), 1e-9, "truth outside of the bounds, s");
  }

  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void aTrayThatEvaporatesForHoursWarnsWithTheWaterToAddAndAPourClearsIt() throws ConfigRefused {
    String hours = "duration_s=%d\n[[at]]\nt_s=0\ndo=\"start\"\n%s";
    LevelRun low = LevelRun.of(hours.formatted(10_800, ""));
    assertEquals(Level.LOW, low.estimate().level());
    assertEquals(1 - low.liquidL(), low.estimate().addL(), 0.01);
    String pour = "[[at]]\nt_s=10790\ndo=\"pour\"\nlitres=0.19\n";
    assertEquals(Level.WELL, LevelRun.of(hours.formatted(10_800, pour)).estimate().level());
    String untold = pour + "told=false\n";
    assertEquals(Level.LOW, LevelRun.of(hours.formatted(10_800, untold)).estimate().level());
  }

  @Test
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void noHealthySessionIsUnsureAndLowOnlyWhereWaterTrulyWent() throws ConfigRefused {
    List<String> wrong = new ArrayList<>();
    for (int seed = 0; seed < SESSIONS; seed++) {
      for (boolean plate : new boolean[] {true, false}) {
        String told = RandomSession.toml(seed, plate);
        judge(told, "told, seed " + seed + ", plate " + plate, wrong);
        String untold = told.replace("do=\"pour\"", "do=\"pour\"\ntold=false");
        judge(untold, "untold, seed " + seed + ", plate " + plate, wrong);
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** A cover is told to nobody: under it the book counts water that stays. */
  private static void judge(String toml, String name, List<String> wrong) throws ConfigRefused {
    LevelRun run = LevelRun.of(toml);
    boolean covered = toml.contains("do=\"cover\"");
    if (run.leastLostShareWhileUnsure() < LOST_UNSURE) {
      wrong.add(name + ": unsure with " + run.leastLostShareWhileUnsure() + " evaporated");
    }
    if (!covered && run.leastLostShareWhileLow() < LOST_LOW) {
      wrong.add(name + ": low with " + run.leastLostShareWhileLow() + " evaporated");
    }
  }
}
