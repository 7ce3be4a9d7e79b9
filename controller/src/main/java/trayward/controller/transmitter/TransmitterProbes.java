package trayward.controller.transmitter;

import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
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
 * Reads transmitters on a thread of its own, because an answer may take its time. The scan thread
 * takes the newest reading and never waits. If this thread dies or hangs, its readings go stale and
 * SR-08 acts.
 */
public final class TransmitterProbes implements ProbeReader, AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(TransmitterProbes.class);

  /** Rounds begin no faster than this, ns: a bath does not change in less. */
  private static final long ROUND_NANOS = 500_000_000L;

  private final RegisterLine line;
  private final Map<ProbeRole, Channel> channels = new EnumMap<>(ProbeRole.class);
  private final Map<ProbeRole, RawReading> newest = new ConcurrentHashMap<>();
  private final Map<ProbeRole, Presence> presence = new EnumMap<>(ProbeRole.class);
  private final MonotonicClock clock;
  private final Thread thread;
  private volatile boolean closing;

  /**
   * Probes on one line.
   *
   * @param line the line; closed with this
   * @param channels where each probe is on it
   * @param clock monotonic time, for the age of readings
   */
  public TransmitterProbes(
      RegisterLine line, Map<ProbeRole, Channel> channels, MonotonicClock clock) {
    this.line = line;
    this.channels.putAll(channels);
    this.clock = clock;
    this.thread = new Thread(this::readUntilClosed, "transmitter");
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
      if (left > 0 && !closing) {
        LockSupport.parkNanos(left);
      }
    }
    line.close();
  }

  /** One round over all probes. */
  void readAll() {
    channels.forEach(
        (role, channel) -> {
          long asked = clock.nanos();
          Answer answer =
              line.read(
                  channel.unit(), channel.function(), channel.register(), channel.type().words());
          RawReading reading = channel.reading(answer, asked);
          newest.put(role, reading);
          tell(role, channel, reading, answer);
        });
  }

  private void tell(ProbeRole role, Channel channel, RawReading reading, Answer answer) {
    boolean answers = reading.kind() != RawReading.Kind.ABSENT;
    Presence now = presence.getOrDefault(role, Presence.START).next(answers, clock.nanos());
    presence.put(role, now);
    switch (now.news()) {
      case NONE -> {}
      case LOST -> {
        String why =
            answer instanceof Answer.Nothing none ? none.why() : "it says the sensor broke";
        LOG.warn("the {} probe, {}, does not answer: {}", role.word(), channel.name(), why);
      }
      case FOUND -> LOG.info("the {} probe, {}, answers again", role.word(), channel.name());
    }
  }

  /** Ends the thread and waits for it a second; a line that hangs holds up nobody. */
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
