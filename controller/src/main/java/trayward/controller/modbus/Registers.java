package trayward.controller.modbus;

/** What a server serves. Called by the server's threads. */
public interface Registers {

  /** Everything that can be read, of one moment: each request is served from one of these. */
  Image image();

  /**
   * Writes coils.
   *
   * @param address of the first
   * @param values at least one
   * @return whether all of them were taken; where not, none was
   */
  Written writeCoils(int address, boolean[] values);

  /**
   * Writes holding registers.
   *
   * @param address of the first
   * @param values at least one, 0 to 65535 each
   * @return whether all of them were taken; where not, none was
   */
  Written writeRegisters(int address, int[] values);

  /** What became of a write. */
  enum Written {
    /** Taken. */
    DONE,
    /** There is no such address to write to. */
    NO_SUCH_ADDRESS,
    /** The address is there, the value cannot be. */
    WRONG_VALUE,
    /** Something before it is still being done: ask again. */
    BUSY
  }

  /** One moment. A read of an address that is not there is {@link #NONE}. */
  interface Image {

    /** No such address. */
    int NONE = -1;

    /** Coil, 0 or 1. */
    int coil(int address);

    /** Discrete input, 0 or 1. */
    int discreteInput(int address);

    /** Holding register, 0 to 65535. */
    int holdingRegister(int address);

    /** Input register, 0 to 65535. */
    int inputRegister(int address);
  }
}
