package trayward.controller.station;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import trayward.controller.modbus.Registers;
import trayward.controller.scan.Snapshot;

/**
 * The controller's registers: every read of one request from one snapshot, every write a request to
 * the scan. Called by the threads of servers; nothing in it waits for a scan.
 */
public final class Station implements Registers {

  /** Holding registers: token, code, argument, heartbeat, two more arguments. */
  static final int HOLDING = 6;

  private static final int COMMAND_WORDS = 3;
  private static final int HEARTBEAT = 3;

  private final StationTray tray;
  private final CommandDesk desk;
  private final EventTail tail;
  private final int[] holding = new int[HOLDING];

  /** A station of a tray; the one reader of its events. */
  public Station(StationTray tray) {
    this.tray = tray;
    this.desk = new CommandDesk(tray);
    this.tail = new EventTail(tray.events());
  }

  @Override
  public Image image() {
    Snapshot now = tray.latest();
    if (now == null) {
      throw new IllegalStateException("no scan yet"); // answered as a failure of the device
    }
    Moment moment =
        new Moment(
            now,
            tail.now(),
            desk.result(),
            tray.upkeep().report(),
            tray.upkeep().startUnconfirmed(),
            tray.calibrations(),
            tray.learned(),
            tray.timing().lateness(),
            tray.simulated());
    int[] written;
    synchronized (holding) {
      written = holding.clone();
    }
    return new StationImage(moment, written);
  }

  @Override
  public Written writeCoils(int address, boolean[] values) {
    List<CommandCode> asked = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      Optional<Coil> coil = Coil.at(address + i);
      if (coil.isEmpty()) {
        return Written.NO_SUCH_ADDRESS;
      }
      if (values[i]) {
        asked.add(coil.get().code());
      }
    }
    asked.forEach(desk::ask);
    return Written.DONE;
  }

  @Override
  public Written writeRegisters(int address, int[] values) {
    if (address + values.length > HOLDING) {
      return Written.NO_SUCH_ADDRESS;
    }
    boolean commands = address < COMMAND_WORDS;
    if (commands && (address != 0 || values.length < COMMAND_WORDS)) {
      return Written.WRONG_VALUE; // half a command is none
    }
    synchronized (holding) {
      int[] next = holding.clone();
      System.arraycopy(values, 0, next, address, values.length);
      if (commands && !desk.write(command(next))) {
        return Written.BUSY;
      }
      System.arraycopy(next, 0, holding, 0, HOLDING);
    }
    if (address <= HEARTBEAT && address + values.length > HEARTBEAT) {
      tray.host().beat(values[HEARTBEAT - address]);
    }
    return Written.DONE;
  }

  private static CommandDesk.Written command(int[] words) {
    return new CommandDesk.Written(words[0], words[1], words[2], words[4], words[5]);
  }

  /** One moment's registers; each value is worked out when it is first asked for. */
  private static final class StationImage implements Image {
    private final Moment moment;
    private final int[] holding;
    private final int[][] encoded = new int[Dictionary.INPUTS.size()][];

    StationImage(Moment moment, int[] holding) {
      this.moment = moment;
      this.holding = holding;
    }

    @Override
    public int coil(int address) {
      return Coil.at(address).isPresent() ? 0 : NONE;
    }

    @Override
    public int discreteInput(int address) {
      return Flag.at(address).map(flag -> flag.holds(moment) ? 1 : 0).orElse(NONE);
    }

    @Override
    public int holdingRegister(int address) {
      return address < holding.length ? holding[address] : NONE;
    }

    @Override
    public int inputRegister(int address) {
      int index = Dictionary.indexOf(address);
      if (index < 0) {
        return Dictionary.gap(address) ? 0 : NONE;
      }
      Entry entry = Dictionary.INPUTS.get(index);
      int @Nullable [] words = encoded[index];
      if (words == null) {
        words = entry.encode(moment);
        encoded[index] = words;
      }
      return words[address - entry.address()];
    }
  }
}
