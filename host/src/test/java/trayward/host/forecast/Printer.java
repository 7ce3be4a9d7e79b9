package trayward.host.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.hipparchus.distribution.continuous.GammaDistribution;

/** A printer whose law is known: makes prints of it. One thread. */
final class Printer {

  /** A law of one's own, within a doubt of what is believed, but nowhere at its centre. */
  static final double[] CHOSEN = {Math.log(150), 75, 3, 0.1, -0.8, -0.35};

  static final double PULL_RATIO = 1.6;

  final double[] law;
  final double scatter;
  private final Random random;

  Printer(double[] law, double scatter, Random random) {
    this.law = law.clone();
    this.scatter = scatter;
    this.random = random;
  }

  /** Drawn as the priors say: scatter first, coefficients in proportion to it. */
  static Printer believed(Random random) {
    double scatter = believedScatter(random);
    return new Printer(drawn(scatter / Priors.SCATTER, random), scatter, random);
  }

  /** Coefficients and scatter drawn apart: a steady hand says nothing of the paper. */
  static Printer believedApart(Random random) {
    return new Printer(drawn(1, random), believedScatter(random), random);
  }

  /** Scaled inverse chi-square about the believed scatter. */
  private static double believedScatter(Random random) {
    double weight = Priors.SCATTER_PRINTS;
    double chi =
        new GammaDistribution(weight / 2, 2).inverseCumulativeProbability(random.nextDouble());
    return Priors.SCATTER * Math.sqrt(weight / chi);
  }

  private static double[] drawn(double width, Random random) {
    return Priors.EMERGENCE.stream()
        .mapToDouble(b -> b.mean() + width * b.doubt() * random.nextGaussian())
        .toArray();
  }

  /** A bath and sheet as they come: 30 to 42 °C, used more or less, 1+16 to 1+33, 2 to 4 stops. */
  Conditions conditions() {
    return new Conditions(
        30 + 12 * random.nextDouble(),
        Features.of(
            0.2 * random.nextDouble(),
            1.5 * random.nextDouble(),
            0.03 + 0.03 * random.nextDouble(),
            2 + 2 * random.nextDouble()));
  }

  /** Expected seconds: the law written out once more, apart from the code that is tested. */
  double expectedS(Conditions at) {
    double kelvin = at.bathC() + 273.15;
    double energy = law[1] * 1000 / 8.314462618 * (1 / kelvin - 1 / 308.15);
    Features f = at.features();
    return Math.exp(
        law[0]
            + energy
            + law[2] * (f.exhaustionM2PerL().orElseThrow() - 0.05)
            + law[3] * (f.bromideGPerL().orElseThrow() - 0.5)
            + law[4] * Math.log(f.strengthShare().orElseThrow() / 0.04)
            + law[5] * (f.stopsOver().orElseThrow() - 3));
  }

  double emergenceS(Conditions at) {
    return expectedS(at) * Math.exp(scatter * random.nextGaussian());
  }

  /** A print; it tells each feature with a chance. */
  PastPrint print(long number, Conditions at, double telling) {
    double emergenceS = emergenceS(at);
    double pullS = emergenceS * PULL_RATIO * Math.exp(0.08 * random.nextGaussian());
    return new PastPrint(
        number, at.bathC(), emergenceS, OptionalDouble.of(pullS), told(at.features(), telling));
  }

  /** What is told of features, each with a chance. */
  Features told(Features f, double telling) {
    return new Features(
        maybe(f.exhaustionM2PerL(), telling),
        maybe(f.bromideGPerL(), telling),
        maybe(f.strengthShare(), telling),
        maybe(f.stopsOver(), telling));
  }

  private OptionalDouble maybe(OptionalDouble value, double telling) {
    return random.nextDouble() < telling ? value : OptionalDouble.empty();
  }

  List<PastPrint> prints(int count) {
    return prints(count, 1);
  }

  List<PastPrint> prints(int count, double telling) {
    List<PastPrint> prints = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      prints.add(print(i + 1, conditions(), telling));
    }
    return prints;
  }

  /** Conditions within the temperatures of these prints. */
  Conditions within(List<PastPrint> prints) {
    double low = prints.stream().mapToDouble(PastPrint::emergenceC).min().orElseThrow();
    double high = prints.stream().mapToDouble(PastPrint::emergenceC).max().orElseThrow();
    return conditions().at(low + (high - low) * random.nextDouble());
  }
}
