package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.safety.InputSlice.Kind;

/**
 * The core explored: every reachable state times every input, one kind of input after the other
 * beside every combination of proofs and the requests; in the profile {@code full} also the four
 * large kinds and every pair of the small ones. All kinds at once are more than can be walked: that
 * is left to the random walks. Counts are printed.
 */
class ExplorationTest {

  private static void explore(String name, boolean everyRequest, boolean warnings, Kind... kinds) {
    Exploration walk = new Exploration(InputSlice.of(everyRequest, kinds), warnings);
    Optional<String> broken = walk.walk();
    System.out.printf(
        "explored %-28s %,9d states %,13d transitions%n",
        name, walk.reached.size(), walk.transitions);
    assertEquals(Optional.empty(), broken);
    EnumSet<State> all = EnumSet.allOf(State.class);
    if (!List.of(kinds).contains(Kind.BATH)) {
      all.remove(State.HOLDING); // with a bath that stays at 36 °C it is always HEATING
    }
    assertEquals(all, walk.states);
    assertTrue(walk.heating > 0, "a walk that never heats shows nothing");
  }

  @ParameterizedTest
  @EnumSource(
      value = Kind.class,
      names = {"BATH", "SECOND_BATH", "PLATE", "FINDINGS"},
      mode = EnumSource.Mode.EXCLUDE)
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  @Verifies(value = "SR-21", side = Side.WITHHOLDS)
  void everyStateTimesEveryInputKeepsTheRules(Kind kind) {
    explore(kind.name(), false, false, kind);
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void everySetOfRequestsInEveryStateKeepsTheRules() {
    explore("every set of requests", true, false);
  }

  @Test
  @Tag("full")
  @Verifies(value = "SR-27", side = Side.WITHHOLDS)
  void warningsChangeNothingOfIt() {
    explore("with warnings", false, true);
  }

  @ParameterizedTest
  @EnumSource(
      value = Kind.class,
      names = {"BATH", "SECOND_BATH", "PLATE", "FINDINGS"})
  @Tag("full")
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  void everyStateTimesTheManyTemperaturesAndFindingsKeepsTheRules(Kind kind) {
    explore(kind.name(), false, false, kind);
  }

  @ParameterizedTest
  @EnumSource(
      value = Kind.class,
      names = {"LINES", "STORE", "HOST", "LATE", "CONTACTS", "WITHHOLDING", "SET"})
  @Tag("full")
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  void everyPairOfSmallKindsKeepsTheRules(Kind one) {
    List<Kind> small =
        List.of(
            Kind.LINES,
            Kind.STORE,
            Kind.HOST,
            Kind.LATE,
            Kind.CONTACTS,
            Kind.WITHHOLDING,
            Kind.SET);
    for (Kind other : small.subList(small.indexOf(one) + 1, small.size())) {
      explore(one + " x " + other, false, false, one, other);
    }
  }
}
