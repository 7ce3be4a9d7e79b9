package trayward.controller.regulate;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Fits a belief to all readings of a warm-up: nonlinear least squares on the logarithms of nine
 * numbers around a prior belief, by Gauss-Newton with the damping of Levenberg and Marquardt.
 *
 * <p>Temperatures show ratios to a heat capacity only. What they cannot show stays where the prior
 * holds it, and the doubt that comes out says so. Stateless; runs on whatever thread can spare it.
 */
final class TrayFit {

  /** Numbers fitted. */
  static final int NUMBERS = 9;

  private static final int N = NUMBERS;

  /**
   * Standard deviation a reading is given, K: noise 0.02 K and rounding to 1/16 K make 0.027; a
   * tray is no two-lump model to the last hundredth.
   */
  private static final double READING_K = 0.03;

  /** Step of the numerical derivatives, in logarithms. */
  private static final double STEP = 1e-4;

  /** No number is moved further than this from its prior, standard deviations. */
  private static final double FURTHEST = 4;

  /** Better by less than this share of the cost: done. */
  private static final double DONE = 1e-4;

  private static final double MAX_DAMPING = 1e8;

  private TrayFit() {}

  /** Fits, by at most {@code rounds} rounds. */
  static FitResult fit(FitJob job, int rounds) {
    double[] sigma = job.doubt().vector();
    int rows = job.view().bathCount() + job.view().plateCount();
    double[] x = job.from().numbers();
    double[] residual = new double[rows];
    double cost = cost(job, sigma, x, residual);
    double[][] jacobian = new double[N][rows];
    RealMatrix normal = new Array2DRowRealMatrix(N, N);
    double damping = 1e-3;
    for (int round = 0; round < rounds; round++) {
      derive(job, x, residual, jacobian);
      normal = normal(jacobian, sigma);
      double[] gradient = gradient(jacobian, residual, sigma, x);
      double before = cost;
      boolean better = false;
      while (!better && damping < MAX_DAMPING) {
        double[] tried = step(normal, gradient, damping, x, sigma);
        double[] triedResidual = new double[rows];
        double triedCost = cost(job, sigma, tried, triedResidual);
        better = triedCost < cost;
        if (better) {
          x = tried;
          residual = triedResidual;
          cost = triedCost;
        }
        damping = Math.max(1e-6, better ? damping / 10 : damping * 10);
      }
      if (!better || before - cost < DONE * before) {
        break;
      }
    }
    double sum = 0;
    for (double r : residual) {
      sum += r * r;
    }
    double rmsK = rows == 0 ? 0 : READING_K * Math.sqrt(sum / rows);
    TrayBelief belief = belief(job.prior(), x);
    return new FitResult(
        job, belief, doubt(normal, sigma), run(job, belief), rmsK, new FitPoint(x));
  }

  /**
   * Covariance of the logarithms a fit found, prior and readings together: what the doubts of
   * ratios need, whose errors go together.
   */
  static RealMatrix covariance(FitResult found) {
    FitJob job = found.job();
    double[] x = found.point().numbers();
    double[] residual = new double[job.view().bathCount() + job.view().plateCount()];
    residuals(job, x, residual);
    double[][] jacobian = new double[N][residual.length];
    derive(job, x, residual, jacobian);
    RealMatrix normal = normal(jacobian, job.doubt().vector());
    return new CholeskyDecomposition(normal).getSolver().getInverse();
  }

  /** The tray of {@code belief} run over the heat of the log, without looking at its readings. */
  static TrayRun run(FitJob job, TrayBelief belief) {
    TrayRun run = start(job, belief);
    for (int i = 0; i < job.view().seconds(); i++) {
      run.second(job.view().heat(i));
    }
    return run;
  }

  private static TrayRun start(FitJob job, TrayBelief b) {
    return new TrayRun(
        TrayRates.of(b, job.room()),
        b.bathLagS(),
        b.plateLagS(),
        job.plateStartC(),
        job.bathStartC());
  }

  static TrayBelief belief(TrayBelief prior, double[] x) {
    TrayModel m = prior.model();
    TrayModel moved =
        new TrayModel(
            m.liquidL() * Math.exp(x[3]),
            m.areaM2(),
            m.plateJPerK() * Math.exp(x[1]),
            m.plateToBathWPerK() * Math.exp(x[2]),
            m.bathLossWPerK() * Math.exp(x[4]),
            m.plateLossWPerK() * Math.exp(x[0]), // in watts, it must lend the others no scale
            m.heaterW() * Math.exp(x[0]),
            m.evaporationFactor() * Math.exp(x[5]));
    return new TrayBelief(
        moved,
        prior.bathLagS() * Math.exp(x[6]),
        prior.plateLagS() * Math.exp(x[7]),
        prior.wallJPerK() * Math.exp(x[8]));
  }

  private static double cost(FitJob job, double[] sigma, double[] x, double[] residual) {
    residuals(job, x, residual);
    double cost = 0;
    for (double r : residual) {
      cost += r * r;
    }
    for (int i = 0; i < N; i++) {
      cost += x[i] / sigma[i] * (x[i] / sigma[i]);
    }
    return cost;
  }

  /** Reading less prediction, in standard deviations. */
  private static void residuals(FitJob job, double[] x, double[] out) {
    WarmUpLog.View view = job.view();
    TrayRun run = start(job, belief(job.prior(), x));
    int bath = 0;
    int plate = 0;
    int bathCount = view.bathCount();
    int plateCount = view.plateCount();
    for (int i = 0; i < view.seconds(); i++) {
      double bathBefore = run.bathSensedC;
      double plateBefore = run.plateSensedC;
      run.second(view.heat(i));
      while (bath < bathCount && view.bathAtS(bath) <= i + 1) {
        double at = bathBefore + (run.bathSensedC - bathBefore) * (view.bathAtS(bath) - i);
        out[bath] = (view.bathC(bath) - at) / READING_K;
        bath++;
      }
      while (plate < plateCount && view.plateAtS(plate) <= i + 1) {
        double at = plateBefore + (run.plateSensedC - plateBefore) * (view.plateAtS(plate) - i);
        out[bathCount + plate] = (view.plateC(plate) - at) / READING_K;
        plate++;
      }
    }
    // Readings newer than the last whole second say nothing yet.
    java.util.Arrays.fill(out, bath, bathCount, 0);
    java.util.Arrays.fill(out, bathCount + plate, bathCount + plateCount, 0);
  }

  private static void derive(FitJob job, double[] x, double[] residual, double[][] jacobian) {
    double[] moved = x.clone();
    for (int i = 0; i < N; i++) {
      moved[i] = x[i] + STEP;
      residuals(job, moved, jacobian[i]);
      moved[i] = x[i];
      for (int k = 0; k < residual.length; k++) {
        jacobian[i][k] = (jacobian[i][k] - residual[k]) / STEP;
      }
    }
  }

  private static RealMatrix normal(double[][] jacobian, double[] sigma) {
    RealMatrix normal = new Array2DRowRealMatrix(N, N);
    for (int i = 0; i < N; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = i == j ? 1 / (sigma[i] * sigma[i]) : 0;
        for (int k = 0; k < jacobian[i].length; k++) {
          sum += jacobian[i][k] * jacobian[j][k];
        }
        normal.setEntry(i, j, sum);
        normal.setEntry(j, i, sum);
      }
    }
    return normal;
  }

  private static double[] gradient(
      double[][] jacobian, double[] residual, double[] sigma, double[] x) {
    double[] gradient = new double[N];
    for (int i = 0; i < N; i++) {
      double sum = x[i] / (sigma[i] * sigma[i]);
      for (int k = 0; k < residual.length; k++) {
        sum += jacobian[i][k] * residual[k];
      }
      gradient[i] = sum;
    }
    return gradient;
  }

  private static double[] step(
      RealMatrix normal, double[] gradient, double damping, double[] x, double[] sigma) {
    RealMatrix damped = normal.copy();
    for (int i = 0; i < N; i++) {
      damped.setEntry(i, i, normal.getEntry(i, i) * (1 + damping));
    }
    RealVector move =
        new CholeskyDecomposition(damped).getSolver().solve(new ArrayRealVector(gradient));
    double[] to = new double[N];
    for (int i = 0; i < N; i++) {
      double bound = FURTHEST * sigma[i];
      to[i] = Math.max(-bound, Math.min(bound, x[i] - move.getEntry(i)));
    }
    return to;
  }

  private static TrayDoubt doubt(RealMatrix normal, double[] sigma) {
    if (normal.getEntry(0, 0) == 0) {
      return TrayDoubt.of(sigma);
    }
    RealMatrix covariance = new CholeskyDecomposition(normal).getSolver().getInverse();
    double[] out = new double[N];
    for (int i = 0; i < N; i++) {
      out[i] = Math.sqrt(covariance.getEntry(i, i));
    }
    return TrayDoubt.of(out);
  }
}
