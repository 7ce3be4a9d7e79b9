package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.EventKind;

/** A tray is learned from its warm-up, by heat that the interlock permitted and nothing else. */
class LearningUnderTheInterlockTest {

  /** In the middle of full heat: the reference tray takes 615 s from 20 to 40 °C. */
  private static final double LEARNING_S = 400;

  private static String warmUp(String more) {
    return String.format(
        Locale.ROOT, "seed=4\nduration_s=900\n[[at]]\nt_s=0\ndo='start'\n%s", more);
  }

  @ParameterizedTest
  @CsvSource({"fan-stops, AIR_LOST", "probe-absent, BATH_PROBE_BAD", "scan-stall, SCAN_LATE"})
  @Verifies(value = "SR-24", side = Side.WITHHOLDS)
  void aFaultEndsTheHeatOfAWarmUpThatIsBeingLearned(String kind, String cause)
      throws ConfigRefused {
    String size = kind.equals("scan-stall") ? "seconds=2\n" : "";
    Played played =
        Played.of(warmUp("[[fault]]\nt_s=" + LEARNING_S + "\nkind='" + kind + "'\n" + size));
    assertTrue(Played.heats(last(played.between(300, LEARNING_S))), "heat before the fault");
    assertEquals(List.of(cause), played.told(EventKind.TRIP));
    double tripS = played.first(0, row -> row.state().equals("LOCKOUT"));
    assertTrue(tripS < LEARNING_S + 10, "tripped at " + tripS);
    assertTrue(played.between(tripS, 900).stream().noneMatch(Played::heats), "heat after it");
  }

  @Test
  @Verifies(value = "SR-24", side = Side.WITHHOLDS)
  void aStopEndsTheHeatOfAWarmUpThatIsBeingLearned() throws ConfigRefused {
    Played played = Played.of(warmUp("[[at]]\nt_s=" + LEARNING_S + "\ndo='stop'\n"));
    assertTrue(
        played.between(LEARNING_S + 0.1, 900).stream().noneMatch(Played::heats), "heat after it");
  }

  @Test
  @Verifies(value = "SR-24", side = Side.ALLOWS)
  void aSoundWarmUpIsLearnedWithoutAPauseOfItsHeat() throws ConfigRefused {
    Played played = Played.of(warmUp(""));
    assertEquals(List.of(), played.told(EventKind.TRIP));
    assertTrue(played.between(100, 600).stream().allMatch(Played::heats), "full heat throughout");
    assertEquals(40, last(played.rows).bathTrueC(), 0.1);
  }

  private static RehearsalRow last(List<RehearsalRow> rows) {
    return rows.get(rows.size() - 1);
  }
}
