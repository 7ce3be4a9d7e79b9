package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What a person's own prints say of a change, where their law is known. */
class AdviceTest {

  /** A printer of whom a stop halves the time and 2 K at 40 °C do what 70 kJ/mol say. */
  private static Forecaster prints(int many) {
    Random random = new Random(3);
    List<PastPrint> prints = new ArrayList<>();
    for (int i = 0; i < many; i++) {
      double c = 38 + 4 * random.nextDouble();
      double stops = 1 + 3 * random.nextDouble();
      double ln =
          Math.log(180)
              + 70_000 / 8.314462618 * (1 / (c + 273.15) - 1 / 313.15)
              - Math.log(2) * (stops - 2)
              + 0.03 * random.nextGaussian();
      prints.add(
          new PastPrint(
              i + 1, c, Math.exp(ln), OptionalDouble.empty(), Features.of(0.1, 0.5, 0.04, stops)));
    }
    return Forecaster.of(prints);
  }

  private static double percent(Advice advice, String what) {
    Advice.Option option =
        advice.options().stream().filter(o -> o.what().equals(what)).findFirst().orElseThrow();
    String words = Advice.ownPrints(option, prints(200), 40).orElseThrow();
    return Double.parseDouble(words.replaceAll("emergence by ([-+0-9]+) %.*", "$1"));
  }

  @Test
  void theSizeOfAChangeIsThatOfTheirOwnLaw() {
    // Half a stop: 2^-0.5 - 1 = -29 %; less: 2^0.5 - 1 = +41 %.
    assertEquals(-29, percent(Advice.TOO_HARD, "exposure"), 2);
    assertEquals(41, percent(Advice.TOO_FLAT, "exposure"), 3);
    // exp(70000 / R (1/315.15 - 1/313.15)) - 1 = -15.7 %.
    assertEquals(-16, percent(Advice.BLACKS_WEAK, "temperature"), 2);
  }

  @Test
  void withoutPrintsNothingIsSaidOfItsSize() {
    Advice.Option option = Advice.TOO_HARD.options().get(0);
    assertEquals(Optional.empty(), Advice.ownPrints(option, Forecaster.of(List.of()), 40));
    Advice.Option sulfite = Advice.GRITTY.options().get(0);
    assertEquals(Optional.empty(), Advice.ownPrints(sulfite, prints(50), 40), "moves no term");
    assertTrue(Advice.ownPrints(option, prints(1), 40).orElseThrow().endsWith("from 1 print"));
  }
}
