package trayward.controller.onewire;

import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.ProbeReader;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.sense.Presence;

/**
 * Reads the kernel's probe files on a thread of its own, because a conversion takes up to 750 ms.
 * The scan thread takes the newest reading and never waits. If this thread dies or hangs, its
 * readings go stale and SR-08 acts.
 */
public final class OneWireProbes implements ProbeReader, AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(OneWireProbes.class);

  /** Rounds begin no faster than this, ns: a kernel conversion is slower, plain files are not. */
  private static final long ROUND_NANOS = 500_000_000L;

  /** Which folders a round reads. */
  public enum Reads {
    /** Those of fitted probes. */
    FITTED,
    /** Every thermometer that the kernel has found, for commissioning. */
    ALL
  }

  private final Path root;
  private final Map<ProbeRole, String> names;
  private final Reads reads;
  private final MonotonicClock clock;
  private final BulkConversion bulk;
  private final Map<ProbeRole, Presence> presence = new EnumMap<>(ProbeRole.class);
  private final Thread thread;
  private volatile Map<String, RawReading> newest = Map.of();
  private volatile boolean closing;

  /**
   * Fitted probes below a folder.
   *
   * @param root folder of the probes' folders
   * @param names folder name of each fitted probe, {@code 28-} and twelve hexadecimal digits
   * @param clock monotonic time, for the age of readings
   */
  public OneWireProbes(Path root, Map<ProbeRole, String> names, MonotonicClock clock) {
    this(root, names, Reads.FITTED, clock);
  }

  /** Probes below a folder, and which of them are read. */
  public OneWireProbes(Path root, Map<ProbeRole, String> names, Reads reads, MonotonicClock clock) {
    this(root, names, reads, clock, Trigger::toFile);
  }

  OneWireProbes(
      Path root, Map<ProbeRole, String> names, Reads reads, MonotonicClock clock, Trigger trigger) {
    this.root = root;
    this.names = new EnumMap<>(ProbeRole.class);
    this.names.putAll(names);
    this.reads = reads;
    this.clock = clock;
    this.bulk = new BulkConversion(root, clock, trigger);
    this.thread = new Thread(this::readUntilClosed, "probes");
    thread.setDaemon(true);
  }

  /** Starts reading. */
  public void start() {
    thread.start();
  }

  @Override
  public RawReading latest(ProbeRole role, long nowNanos) {
    String name = names.get(role);
    RawReading reading = name == null ? null : newest.get(name);
    return reading == null ? RawReading.failed(RawReading.Kind.ABSENT, nowNanos) : reading;
  }

  /** The newest reading of each folder that is read, by its name, in order. */
  public Map<String, RawReading> newest() {
    return newest;
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
    Set<String> folders = new LinkedHashSet<>();
    if (reads == Reads.ALL) {
      folders.addAll(W1Folder.probes(root));
    }
    folders.addAll(names.values());
    Map<String, Long> began = bulk.convert(folders);
    Map<String, RawReading> round = new LinkedHashMap<>();
    for (String name : folders) {
      Long converted = began.get(name);
      if (converted == null && bulk.owed(name)) {
        var unused = W1Folder.read(root, name, 0);
      }
      long taken = converted == null ? clock.nanos() : converted;
      round.put(name, W1Folder.read(root, name, taken));
      publish(round);
    }
    newest = Collections.unmodifiableMap(round); // without what has left the bus
    names.forEach((role, name) -> tell(role, name, latest(role, clock.nanos())));
  }

  /** Each reading at once: the next probe of a round may take its time, or hang. */
  private void publish(Map<String, RawReading> round) {
    Map<String, RawReading> all = new LinkedHashMap<>(round);
    newest.forEach(all::putIfAbsent);
    newest = Collections.unmodifiableMap(all);
  }

  private void tell(ProbeRole role, String name, RawReading reading) {
    boolean answers = reading.kind() != RawReading.Kind.ABSENT;
    Presence now = presence.getOrDefault(role, Presence.START).next(answers, clock.nanos());
    presence.put(role, now);
    switch (now.news()) {
      case NONE -> {}
      case LOST -> LOG.warn("the {} probe, {}, does not answer", role.word(), name);
      case FOUND -> LOG.info("the {} probe, {}, answers again", role.word(), name);
    }
  }

  /** Ends the thread and waits for it a second; a read that hangs holds up nobody. */
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
