package trayward.controller.bench;

import java.util.Objects;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import trayward.controller.scan.Snapshot;

/**
 * Time and memory of one scan in a hold, with bath and plate probe and with the bath probe alone.
 * Each operation is one scan of a recorded hold: the simulation costs nothing here.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(2)
@Warmup(iterations = ScanBench.WARM_UP)
@Measurement(iterations = ScanBench.MEASURED)
public class ScanBench {

  static final int WARM_UP = 30;
  static final int MEASURED = 20;

  /** Half an hour of a hold: every watch has had its turn, and the level is told three times. */
  private static final int SCANS = 18_000;

  /** Probes that are fitted. */
  @Param({"2", "1"})
  public int probes;

  private @Nullable Hold hold;

  /** Records the hold that is to be measured, and brings a new scan to its beginning. */
  @Setup
  public void record() {
    boolean plateFitted = probes == 2;
    Recording recording = new Recording(Hold.LEAD_IN + (WARM_UP + MEASURED) * SCANS, plateFitted);
    Hold anew = new Hold(recording, recording, Recording.nowhere(), plateFitted);
    for (int k = 0; k < Hold.LEAD_IN; k++) {
      var unused = anew.next();
    }
    hold = anew;
  }

  /** Half an hour of scans. */
  @Benchmark
  @OperationsPerInvocation(SCANS)
  public Snapshot scan() {
    Hold on = Objects.requireNonNull(hold);
    Snapshot last = on.next();
    for (int k = 1; k < SCANS; k++) {
      last = on.next();
    }
    Hold.check(last);
    return last;
  }
}
