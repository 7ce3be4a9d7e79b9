package trayward.host.link;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import trayward.controller.event.AlarmCause;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.modbus.ModbusClient;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.ProbeRole;
import trayward.controller.station.Codes;
import trayward.controller.station.CommandCode;
import trayward.controller.station.StatusRegisters;

/**
 * The link over a serial line or loopback TCP. A thread of its own asks the controller's registers
 * four times a second and carries commands between two such rounds; the rest is safe on any thread.
 */
public final class RegisterLink implements TrayLink, AutoCloseable {

  /** A status older than this is not now. */
  private static final long FRESH_NANOS = 2_000_000_000L;

  /** From the beginning of one round to that of the next. */
  private static final long ROUND_NANOS = 250_000_000L;

  /** Between two attempts on a line that is down: it must be back well within three seconds. */
  private static final long RETRY_NANOS = 500_000_000L;

  /** Events waiting for a recorder; it takes them ten times a second. */
  private static final int MAX_EVENTS = 1000;

  private final RegisterPoll poll;
  private final CommandLine commands;
  private final MonotonicClock clock;
  private final Thread thread;
  private final AtomicLong beats = new AtomicLong();
  private final Deque<LinkEvent> events = new ArrayDeque<>();
  private volatile boolean closing;

  /**
   * A link that has not started.
   *
   * @param client asks the controller
   * @param clock monotonic time, for the age of a status
   */
  public RegisterLink(ModbusClient client, MonotonicClock clock) {
    this.poll = new RegisterPoll(client, clock);
    this.commands = new CommandLine(client);
    this.clock = clock;
    this.thread = new Thread(this::runUntilClosed, "link");
    thread.setDaemon(true);
  }

  /** Starts asking. */
  public void start() {
    thread.start();
  }

  private void runUntilClosed() {
    while (!closing) {
      long began = clock.nanos();
      boolean up = round();
      if (!up) {
        commands.undelivered(poll.trouble());
      }
      long left = (up ? ROUND_NANOS : RETRY_NANOS) - (clock.nanos() - began);
      if (left > 0 && !commands.anyWaiting()) {
        LockSupport.parkNanos(left);
      }
    }
    commands.undelivered("the program is being stopped");
    poll.close();
  }

  /**
   * A round; whatever goes wrong in it, the next one is tried. Commands first: one may be a stop.
   */
  boolean round() {
    boolean delivered = commands.carry(beats.get());
    boolean up = poll.round();
    commands.release();
    keep(poll.takeEvents());
    return delivered && up;
  }

  private void keep(List<LinkEvent> news) {
    synchronized (events) {
      for (LinkEvent event : news) {
        if (events.size() >= MAX_EVENTS) {
          events.removeFirst();
        }
        events.addLast(event);
      }
    }
  }

  @Override
  public Optional<TrayStatus> latest() {
    RegisterPoll.Seen seen = poll.seen();
    return seen == null || clock.nanos() - seen.changedNanos() > FRESH_NANOS
        ? Optional.empty()
        : Optional.of(seen.status());
  }

  private LinkAnswer ask(CommandCode code, int argument, int more1, int more2) {
    return commands.ask(code, argument, more1, more2, () -> LockSupport.unpark(thread));
  }

  private LinkAnswer ask(CommandCode code, int argument) {
    return ask(code, argument, 0, 0);
  }

  @Override
  public LinkAnswer send(Command command) {
    return ask(
        switch (command) {
          case STOP -> CommandCode.STOP;
          case START -> CommandCode.START;
          case ACKNOWLEDGE -> CommandCode.ACKNOWLEDGE;
          case RESET -> CommandCode.RESET;
          case PRESENCE -> CommandCode.PRESENCE;
        },
        0);
  }

  @Override
  public LinkAnswer start(boolean confirmed) {
    return ask(confirmed ? CommandCode.START_CONFIRMED : CommandCode.START, 0);
  }

  @Override
  public LinkAnswer setTemperature(double celsius) {
    return scaled(CommandCode.SET_TEMPERATURE, celsius, 100, Short.MIN_VALUE, Short.MAX_VALUE);
  }

  @Override
  public LinkAnswer topUp(double litres) {
    return scaled(CommandCode.TOP_UP, litres, 1000, 0, 0xFFFF);
  }

  @Override
  public LinkAnswer confirmLevel(OptionalDouble litres) {
    return litres.isPresent()
        ? scaled(CommandCode.LEVEL_HOLDS, litres.getAsDouble(), 1000, 0, 0xFFFF)
        : ask(CommandCode.LEVEL_AS_SAID, 0);
  }

  /** What does not fit a register is nothing a controller would take. */
  private LinkAnswer scaled(CommandCode code, double value, int scale, int least, int most) {
    double scaled = Math.rint(value * scale);
    return scaled >= least && scaled <= most
        ? ask(code, (int) scaled & 0xFFFF)
        : new LinkAnswer.Refused("found " + value + ", which no tray can be told");
  }

  @Override
  public void call(Call call) {
    int code = Codes.CALL.code(Calls.of(call));
    commands.tell(CommandCode.CALL, code, () -> LockSupport.unpark(thread));
  }

  @Override
  public LinkAnswer silence(String cause) {
    return AlarmCause.of(cause)
        .map(known -> ask(CommandCode.SILENCE, Codes.cause(known)))
        .orElseGet(() -> Calls.noAlarm(cause));
  }

  @Override
  public UpkeepView upkeep() {
    return poll.upkeep();
  }

  @Override
  public LinkAnswer upkeepDone(String item) {
    return UpkeepItem.of(item)
        .map(i -> ask(CommandCode.UPKEEP_DONE, Codes.UPKEEP.code(i)))
        .orElse(new LinkAnswer.Refused("there is no " + item + " to look after"));
  }

  @Override
  public ProbesView probes() {
    return poll.probes();
  }

  @Override
  public LinkAnswer calibrateIce(String role) {
    return calibrated(role, CommandCode.CALIBRATE_ICE, 0, 0);
  }

  @Override
  public LinkAnswer calibrateReference(String role, double celsius, double statedK) {
    long hundredths = Math.round(celsius * 100);
    long thousandths = Math.round(statedK * 1000);
    return Math.abs(hundredths) <= Short.MAX_VALUE && thousandths >= 0 && thousandths <= 0xFFFF
        ? calibrated(
            role, CommandCode.CALIBRATE_REFERENCE, (int) hundredths & 0xFFFF, (int) thousandths)
        : new LinkAnswer.Refused("no thermometer shows that");
  }

  @Override
  public LinkAnswer forgetCalibration(String role) {
    return calibrated(role, CommandCode.FORGET_CALIBRATION, 0, 0);
  }

  private LinkAnswer calibrated(String word, CommandCode code, int more1, int more2) {
    return ProbeRole.of(word)
        .map(role -> ask(code, Codes.PROBE.code(role), more1, more2))
        .orElse(new LinkAnswer.Refused("there is no probe " + word));
  }

  @Override
  public TrayCalibrated calibrateTray(double litres) {
    long millilitres = Math.round(litres * 1000);
    if (millilitres < 0 || millilitres > 0xFFFF) {
      return new TrayCalibrated(false, "no tray holds that much");
    }
    return commands.askTray((int) millilitres, () -> LockSupport.unpark(thread));
  }

  @Override
  public List<LinkEvent> takeEvents() {
    synchronized (events) {
      List<LinkEvent> taken = new ArrayList<>(events);
      events.clear();
      return taken;
    }
  }

  @Override
  public void beat() {
    beats.incrementAndGet();
  }

  @Override
  public boolean simulated() {
    return poll.simulated();
  }

  @Override
  public Optional<ScanLateness> lateness() {
    RegisterPoll.Seen seen = poll.seen();
    return Optional.ofNullable(seen)
        .map(
            s ->
                new ScanLateness(
                    (long) StatusRegisters.SCANS_TIMED.number(s.registers()),
                    StatusRegisters.LATE_P50.number(s.registers()),
                    StatusRegisters.LATE_P999.number(s.registers()),
                    StatusRegisters.LATE_MAX.number(s.registers())));
  }

  @Override
  public void close() {
    closing = true;
    LockSupport.unpark(thread);
    try {
      thread.join(1000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
