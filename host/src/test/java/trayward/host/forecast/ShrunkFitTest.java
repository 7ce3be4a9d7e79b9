package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShrunkFitTest {

  private static final Prior PRIOR = new Prior(List.of(5.0, 0.8), List.of(0.5, 0.4), 0.15, 4);

  @Test
  void withoutObservationsItIsThePrior() {
    ShrunkFit fit = ShrunkFit.of(PRIOR, new double[0][], new double[0]);
    assertEquals(5, fit.coefficient(0), 1e-12);
    assertEquals(0.8, fit.coefficient(1), 1e-12);
    assertEquals(0.15, fit.scatter(), 1e-12);
    Interval at = fit.one(new double[] {1, 2}, 0.8);
    double sd = Math.sqrt(0.15 * 0.15 + 0.5 * 0.5 + 4 * 0.4 * 0.4);
    double t = new TDistribution(4).inverseCumulativeProbability(0.9);
    assertEquals(6.6, at.expected(), 1e-12);
    assertEquals(t * sd, at.high() - at.expected(), 1e-9);
  }

  @Test
  void withAPriorOfNoWeightItIsOrdinaryLeastSquares() {
    Random random = new Random(3);
    double[][] rows = new double[30][];
    double[] values = new double[30];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = new double[] {1, random.nextGaussian()};
      values[i] = 2 - 3 * rows[i][1] + 0.2 * random.nextGaussian();
    }
    Prior vague = new Prior(List.of(0.0, 0.0), List.of(1e7, 1e7), 0.2, 1e-9);
    LinearFit plain = LinearFit.of(rows, values);
    ShrunkFit shrunk = ShrunkFit.of(vague, rows, values);
    assertEquals(plain.coefficient(0), shrunk.coefficient(0), 1e-9);
    assertEquals(plain.coefficient(1), shrunk.coefficient(1), 1e-9);
    // The pooled scatter divides by all observations, the plain one by what is left of them.
    assertEquals(plain.residualSd() * Math.sqrt(plain.freedom() / 30.0), shrunk.scatter(), 1e-9);
  }

  /** A mean alone: the weighted mean of prior and observations, by hand. */
  @Test
  void aMeanIsDrawnTowardsThePriorByItsWeightInObservations() {
    Prior prior = new Prior(List.of(10.0), List.of(0.5), 1, 2); // worth 4 observations
    double[][] rows = {{1}, {1}, {1}, {1}};
    ShrunkFit fit = ShrunkFit.of(prior, rows, new double[] {12, 12, 12, 12});
    assertEquals(11, fit.coefficient(0), 1e-12);
    // 4 (12 - 11)^2 + 4 (10 - 11)^2 = 8 beside the prior's 2; over 2 + 4.
    assertEquals(Math.sqrt(10.0 / 6), fit.scatter(), 1e-12);
  }

  @Test
  void threePrintsGiveAnIntervalThatIsHonestlyWideAndManyANarrowOne() {
    Random random = new Random(11);
    double few = width(3, random);
    double many = width(60, random);
    assertTrue(few > 2 * many, few + " and " + many);
  }

  private static double width(int prints, Random random) {
    Sample sample = new Sample(prints, 5, 0.8, 0.15, random);
    Interval at = ShrunkFit.of(PRIOR, sample.rows, sample.values).one(new double[] {1, 2}, 0.95);
    return at.high() - at.low();
  }

  /**
   * Ten thousand printers drawn from what is believed, with a new print each: of the intervals of
   * 80 % 78 to 82 % must hold it, however few prints there were before.
   */
  @ParameterizedTest
  @ValueSource(ints = {0, 3, 10, 40})
  void anIntervalOfEightyPercentHoldsEightyPercent(int prints) {
    Random random = new Random(80 + prints);
    int trials = 10_000;
    int held = 0;
    for (int trial = 0; trial < trials; trial++) {
      // Scaled inverse chi-square with 4 degrees of freedom about the prior's scatter.
      double chi = new GammaDistribution(2, 2).inverseCumulativeProbability(random.nextDouble());
      double scatter = 0.15 * Math.sqrt(4 / chi);
      double constant = 5 + scatter / 0.15 * 0.5 * random.nextGaussian();
      double slope = 0.8 + scatter / 0.15 * 0.4 * random.nextGaussian();
      Sample sample = new Sample(prints + 1, constant, slope, scatter, random);
      ShrunkFit fit = ShrunkFit.of(PRIOR, sample.first(prints), sample.firstValues(prints));
      held += fit.one(sample.rows[prints], 0.8).holds(sample.values[prints]) ? 1 : 0;
    }
    double share = (double) held / trials;
    System.out.printf("%d prints: an interval of 80 %% held %.3f%n", prints, share);
    assertTrue(share > 0.78 && share < 0.82, prints + " prints: " + share);
  }

  @Test
  void aPriorWithoutDoubtIsNone() {
    assertThrows(IllegalArgumentException.class, () -> new Prior(List.of(1.0), List.of(0.0), 1, 1));
    assertThrows(
        IllegalArgumentException.class, () -> new Prior(List.of(1.0), List.of(1.0, 1.0), 1, 1));
  }

  /** Prints of a law that is known: a constant and a slope over something between -1 and 1. */
  private static final class Sample {
    final double[][] rows;
    final double[] values;

    Sample(int prints, double constant, double slope, double scatter, Random random) {
      rows = new double[prints][];
      values = new double[prints];
      for (int i = 0; i < prints; i++) {
        rows[i] = new double[] {1, 2 * random.nextDouble() - 1};
        values[i] = constant + slope * rows[i][1] + scatter * random.nextGaussian();
      }
    }

    double[][] first(int count) {
      return java.util.Arrays.copyOf(rows, count);
    }

    double[] firstValues(int count) {
      return java.util.Arrays.copyOf(values, count);
    }
  }
}
