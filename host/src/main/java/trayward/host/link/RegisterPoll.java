package trayward.host.link;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import trayward.controller.modbus.ModbusClient;
import trayward.controller.modbus.ModbusClient.Reply;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.ProbeRole;
import trayward.controller.station.Block;
import trayward.controller.station.Codes;
import trayward.controller.station.Flag;
import trayward.controller.station.ProbeRegisters;
import trayward.controller.station.StatusRegisters;
import trayward.controller.station.TrayRegisters;
import trayward.controller.station.UpkeepRegisters;

/**
 * Reads the controller's registers: the status in each round, one block of what changes seldom, and
 * events where there are new ones. {@link #round} is the link thread's; the rest is safe on any.
 */
final class RegisterPoll {

  private static final UpkeepView NO_UPKEEP = new UpkeepView("", true, "", List.of());

  private final ModbusClient client;
  private final MonotonicClock clock;
  private final EventFeed feed = new EventFeed();
  private final Map<ProbeRole, Block> probes =
      Collections.synchronizedMap(new EnumMap<>(ProbeRole.class));
  private final List<LinkEvent> events = new ArrayList<>();
  private volatile @Nullable Seen seen;
  private volatile @Nullable Block texts;
  private volatile @Nullable Block upkeep;
  private volatile String trouble = "the controller has not been asked yet";
  private volatile boolean simulated;
  private int turn;

  /**
   * A status and its age.
   *
   * @param registers the status registers
   * @param status the same, decoded
   * @param changedNanos when a new scan was last seen: a station that answers for a scan that
   *     stands still gives nothing that is now
   */
  record Seen(Block registers, TrayStatus status, long changedNanos) {}

  RegisterPoll(ModbusClient client, MonotonicClock clock) {
    this.client = client;
    this.clock = clock;
  }

  /** One round; false where the controller did not answer. */
  boolean round() {
    Block status = read(0, StatusRegisters.WORDS);
    if (status == null) {
      return false;
    }
    int version = StatusRegisters.MAP_VERSION.whole(status);
    if (version != StatusRegisters.VERSION) {
      trouble = "the controller has registers of version " + version + ", which this host does not";
      return false;
    }
    simulated = Flag.SIMULATED.in(StatusRegisters.FLAGS.whole(status));
    seen = new Seen(status, StatusReader.status(status, texts), changedNanos(status));
    seldom();
    events.addAll(
        feed.news(
            (long) StatusRegisters.EVENTS.number(status),
            StatusRegisters.UPTIME.number(status),
            this::read));
    return true;
  }

  private long changedNanos(Block status) {
    Seen before = seen;
    if (before != null
        && StatusRegisters.SCAN_COUNT.number(status)
            == StatusRegisters.SCAN_COUNT.number(before.registers())) {
      return before.changedNanos();
    }
    return clock.nanos();
  }

  /** One of what changes seldom, in turn; what fails keeps what it was. */
  private void seldom() {
    turn = (turn + 1) % (2 + Codes.PROBE.names().size());
    switch (turn) {
      case 0 -> texts = either(read(TrayRegisters.BASE, TrayRegisters.WORDS), texts);
      case 1 -> upkeep = either(read(UpkeepRegisters.BASE, UpkeepRegisters.WORDS), upkeep);
      default -> {
        ProbeRole role = Codes.PROBE.names().get(turn - 2);
        Block block = read(ProbeRegisters.base(role), ProbeRegisters.WORDS);
        if (block != null) {
          probes.put(role, block);
        }
      }
    }
  }

  private static @Nullable Block either(@Nullable Block fresh, @Nullable Block old) {
    return fresh == null ? old : fresh;
  }

  private @Nullable Block read(int address, int words) {
    Reply reply = client.readInputRegisters(address, words);
    if (reply instanceof Reply.Answer answer) {
      int[] values = new int[words];
      for (int i = 0; i < words; i++) {
        values[i] = answer.register(i);
      }
      return new Block(address, values);
    }
    trouble = Replies.words(reply);
    return null;
  }

  /** What was wrong when the controller last did not answer. */
  String trouble() {
    return trouble;
  }

  @Nullable Seen seen() {
    return seen;
  }

  boolean simulated() {
    return simulated;
  }

  /** The link thread's: events since it last asked. */
  List<LinkEvent> takeEvents() {
    List<LinkEvent> taken = List.copyOf(events);
    events.clear();
    return taken;
  }

  UpkeepView upkeep() {
    Block dates = upkeep;
    Block words = texts;
    Seen now = seen;
    return dates == null || words == null || now == null
        ? NO_UPKEEP
        : UpkeepReader.upkeep(
            dates, words, Flag.CLOCK_SET.in(StatusRegisters.FLAGS.whole(now.registers())));
  }

  ProbesView probes() {
    Seen now = seen;
    if (now == null) {
      return ProbesView.NONE;
    }
    Map<ProbeRole, Block> places;
    synchronized (probes) {
      places = new EnumMap<>(ProbeRole.class);
      places.putAll(probes);
    }
    return ProbesReader.probes(now.registers(), places);
  }

  void close() {
    client.close();
  }
}
