package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** Ordinary least squares on reference data whose results are certified or published. */
class LinearFitTest {

  /** NIST Statistical Reference Datasets, Norris: y, x. */
  private static final double[][] NORRIS = {
    {0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5},
    {668.5, 666.3}, {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4},
    {0.1, 0.6}, {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6},
    {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
    {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0},
    {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5}
  };

  /** NIST Statistical Reference Datasets, Longley: y, x1 to x6. */
  private static final double[][] LONGLEY = {
    {60323, 83.0, 234289, 2356, 1590, 107608, 1947},
    {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
    {60171, 88.2, 258054, 3682, 1616, 109773, 1949},
    {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
    {63221, 96.2, 328975, 2099, 3099, 112075, 1951},
    {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
    {64989, 99.0, 365385, 1870, 3547, 115094, 1953},
    {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
    {66019, 101.2, 397469, 2904, 3048, 117388, 1955},
    {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
    {68169, 108.4, 442769, 2936, 2798, 120445, 1957},
    {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
    {68655, 112.6, 482704, 3813, 2552, 123366, 1959},
    {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
    {69331, 115.7, 518173, 4806, 2572, 127852, 1961},
    {70551, 116.9, 554894, 4007, 2827, 130081, 1962}
  };

  /** Ezekiel 1930, speeds and stopping distances, public domain. */
  private static final double[] SPEED = {
    4, 4, 7, 7, 8, 9, 10, 10, 10, 11, 11, 12, 12, 12, 12, 13, 13, 13, 13, 14, 14, 14, 14, 15, 15,
    15, 16, 16, 17, 17, 17, 18, 18, 18, 18, 19, 19, 19, 20, 20, 20, 20, 20, 22, 23, 24, 24, 24, 24,
    25
  };

  private static final double[] DISTANCE = {
    2, 10, 4, 22, 16, 10, 18, 26, 34, 17, 28, 14, 20, 24, 28, 26, 34, 34, 46, 26, 36, 60, 80, 20,
    26, 54, 32, 40, 32, 40, 50, 42, 56, 76, 84, 36, 46, 68, 32, 48, 52, 56, 64, 66, 54, 70, 92, 93,
    120, 85
  };

  /** The line through data whose first column is what was observed. */
  private static LinearFit fit(double[][] data) {
    double[][] rows = new double[data.length][];
    double[] values = new double[data.length];
    for (int i = 0; i < data.length; i++) {
      rows[i] = data[i].clone();
      rows[i][0] = 1;
      values[i] = data[i][0];
    }
    return LinearFit.of(rows, values);
  }

  private static void near(double expected, double found, double relative) {
    assertEquals(expected, found, Math.abs(expected) * relative);
  }

  /** Certified values of NIST StRD Norris. */
  @Test
  void norrisComesOutAsCertified() {
    LinearFit fit = fit(NORRIS);
    near(-0.262323073774029, fit.coefficient(0), 1e-9);
    near(1.00211681802045, fit.coefficient(1), 1e-12);
    near(0.232818234301152, fit.standardError(0), 1e-9);
    near(0.429796848199937e-3, fit.standardError(1), 1e-9);
    near(0.884796396144373, fit.residualSd(), 1e-9);
    assertEquals(0.999993745883712, fit.rSquared(), 1e-12);
    near(5436385.54079785, fit.fStatistic(), 1e-8);
  }

  /** The same line at 500 by the formulas of the NIST/SEMATECH e-Handbook, 4.5.1.2. */
  @Test
  void norrisIntervalsAreThoseOfTheHandbook() {
    double[] at = {1, 500};
    Interval one = fit(NORRIS).one(at, 0.95);
    Interval mean = fit(NORRIS).mean(at, 0.95);
    assertEquals(500.796086, one.expected(), 1e-5);
    assertEquals(498.971794, one.low(), 1e-5);
    assertEquals(502.620378, one.high(), 1e-5);
    assertEquals(500.488196, mean.low(), 1e-5);
    assertEquals(501.103975, mean.high(), 1e-5);
  }

  /** Certified values of NIST StRD Longley, whose columns are nearly dependent. */
  @Test
  void longleyComesOutAsCertified() {
    LinearFit fit = fit(LONGLEY);
    double[] coefficients = {
      -3482258.63459582,
      15.0618722713733,
      -0.358191792925910e-01,
      -2.02022980381683,
      -1.03322686717359,
      -0.511041056535807e-01,
      1829.15146461355
    };
    double[] errors = {
      890420.383607373,
      84.9149257747669,
      0.334910077722432e-01,
      0.488399681651699,
      0.214274163161675,
      0.226073200069370,
      455.478499142212
    };
    for (int i = 0; i < coefficients.length; i++) {
      near(coefficients[i], fit.coefficient(i), 1e-7);
      near(errors[i], fit.standardError(i), 1e-7);
    }
    near(304.854073561965, fit.residualSd(), 1e-9);
    near(0.995479004577296, fit.rSquared(), 1e-9);
    near(330.285339234588, fit.fStatistic(), 1e-8);
  }

  /** Textbook intervals for the stopping distances. */
  @Test
  void stoppingDistancesComeOutAsPublished() {
    double[][] data = new double[SPEED.length][];
    for (int i = 0; i < data.length; i++) {
      data[i] = new double[] {DISTANCE[i], SPEED[i]};
    }
    LinearFit fit = fit(data);
    assertEquals(-17.57909489, fit.coefficient(0), 1e-8);
    assertEquals(3.93240876, fit.coefficient(1), 1e-8);
    assertEquals(15.37958675, fit.residualSd(), 1e-8);
    Interval ten = fit.one(new double[] {1, 10}, 0.95);
    assertEquals(21.744993, ten.expected(), 1e-5);
    assertEquals(-9.809601, ten.low(), 1e-5);
    assertEquals(53.299586, ten.high(), 1e-5);
    assertEquals(15.461917, fit.mean(new double[] {1, 10}, 0.95).low(), 1e-5);
    assertEquals(71.405594, fit.mean(new double[] {1, 21}, 0.95).high(), 1e-5);
    assertEquals(33.422574, fit.one(new double[] {1, 21}, 0.95).low(), 1e-5);
  }

  /** Rates of a reaction of general chemistry (data from memory): slope of ln k over 1/T. */
  @Test
  void anActivationEnergyIsTheSlopeOverOneByTemperature() {
    double[] kelvin = {555, 575, 645, 700, 781};
    double[] rate = {3.52e-7, 1.22e-6, 8.59e-5, 1.16e-3, 3.95e-2};
    double[][] data = new double[kelvin.length][];
    for (int i = 0; i < kelvin.length; i++) {
      data[i] = new double[] {Math.log(rate[i]), 1 / kelvin[i]};
    }
    double slopeK = fit(data).coefficient(1);
    assertEquals(-22287.4, slopeK, 1);
    assertEquals(185.31, -slopeK * 8.314462618e-3, 0.02); // gas constant, CODATA 2018
  }

  @Test
  void whatDoesNotDetermineALineIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> fit(new double[][] {{1, 2}, {2, 3}}));
    assertThrows(
        IllegalArgumentException.class, () -> fit(new double[][] {{1, 5}, {2, 5}, {3, 5}}));
    assertThrows(
        IllegalArgumentException.class, () -> LinearFit.of(new double[0][], new double[0]));
  }
}
