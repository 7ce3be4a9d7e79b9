package trayward.controller.scan;

import org.HdrHistogram.Histogram;
import org.HdrHistogram.SingleWriterRecorder;

/** How late scans come. The scan thread records; any one thread at a time asks. */
public final class ScanTiming {

  /** Largest lateness told apart, microseconds: a minute; later ones count as that. */
  private static final long MAX_US = 60_000_000L;

  private final SingleWriterRecorder recorder = new SingleWriterRecorder(MAX_US, 2);
  private final Histogram all = new Histogram(MAX_US, 2);

  void record(long lateNanos) {
    recorder.recordValue(Math.max(0, Math.min(MAX_US, lateNanos / 1000)));
  }

  /**
   * A summary since the start.
   *
   * @param scans scans counted
   * @param p50Ms median lateness, ms
   * @param p999Ms 99.9th percentile, ms
   * @param maxMs greatest, ms
   */
  public record Lateness(long scans, double p50Ms, double p999Ms, double maxMs) {}

  /** Lateness of all scans so far. */
  public synchronized Lateness lateness() {
    all.add(recorder.getIntervalHistogram());
    return new Lateness(
        all.getTotalCount(),
        all.getValueAtPercentile(50) / 1000.0,
        all.getValueAtPercentile(99.9) / 1000.0,
        all.getMaxValue() / 1000.0);
  }
}
