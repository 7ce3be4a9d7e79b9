package trayward.controller.station;

import java.util.Arrays;
import java.util.Optional;

/** Coils: each acts when 1 is written and reads as 0. */
public enum Coil {
  /** Heat off. */
  STOP(0, CommandCode.STOP),
  /** The alarm has been seen. */
  ACKNOWLEDGE(1, CommandCode.ACKNOWLEDGE),
  /** Somebody is here. */
  PRESENCE(2, CommandCode.PRESENCE);

  private final int address;
  private final CommandCode code;

  Coil(int address, CommandCode code) {
    this.address = address;
    this.code = code;
  }

  /** Its address. */
  public int address() {
    return address;
  }

  /** The coil at an address. */
  static Optional<Coil> at(int address) {
    return Arrays.stream(values()).filter(c -> c.address == address).findFirst();
  }

  /** What it asks. */
  public CommandCode code() {
    return code;
  }
}
