package trayward.controller.onewire;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.ProbeReader;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;

/**
 * Reads the kernel's probe files on a thread of its own, because a read waits for a conversion of
 * up to 750 ms. The scan thread takes the newest reading and never waits. If this thread dies or
 * hangs, its readings go stale and SR-08 acts.
 */
public final class OneWireProbes implements ProbeReader, AutoCloseable {

  /** Rounds begin no faster than this, ns: a kernel conversion is slower, plain files are not. */
  private static final long ROUND_NANOS = 500_000_000L;

  /** Longest file read, bytes; the kernel's has under 100. */
  private static final int MAX_BYTES = 512;

  private final Map<ProbeRole, Path> files = new EnumMap<>(ProbeRole.class);
  private final Map<ProbeRole, RawReading> newest = new ConcurrentHashMap<>();
  private final MonotonicClock clock;
  private final Thread thread;
  private volatile boolean closing;

  /**
   * Probes below a folder.
   *
   * @param root folder of the probes' folders
   * @param names folder name of each fitted probe, {@code 28-} and twelve hexadecimal digits
   * @param clock monotonic time, for the age of readings
   */
  public OneWireProbes(Path root, Map<ProbeRole, String> names, MonotonicClock clock) {
    this.clock = clock;
    names.forEach((role, name) -> files.put(role, root.resolve(name).resolve("w1_slave")));
    this.thread = new Thread(this::readUntilClosed, "probes");
    thread.setDaemon(true);
  }

  /** Starts reading. */
  public void start() {
    thread.start();
  }

  @Override
  public RawReading latest(ProbeRole role, long nowNanos) {
    RawReading reading = newest.get(role);
    return reading == null ? RawReading.failed(RawReading.Kind.ABSENT, nowNanos) : reading;
  }

  private void readUntilClosed() {
    while (!closing) {
      long began = clock.nanos();
      readAll();
      long left = ROUND_NANOS - (clock.nanos() - began);
      if (left > 0) {
        LockSupport.parkNanos(left);
      }
    }
  }

  /** One round over all probes. */
  void readAll() {
    files.forEach((role, file) -> newest.put(role, read(file, clock.nanos())));
  }

  private static RawReading read(Path file, long takenNanos) {
    try (var in = Files.newInputStream(file)) {
      String text = new String(in.readNBytes(MAX_BYTES), StandardCharsets.US_ASCII);
      return W1Slave.parse(text, takenNanos);
    } catch (IOException | RuntimeException e) {
      // A vanished folder, a bus error, anything: no reading is a value, and the thread goes on.
      return RawReading.failed(RawReading.Kind.ABSENT, takenNanos);
    }
  }

  @Override
  public void close() {
    closing = true;
    LockSupport.unpark(thread);
    try {
      thread.join(TimeUnit.SECONDS.toMillis(1));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
