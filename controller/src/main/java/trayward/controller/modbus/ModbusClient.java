package trayward.controller.modbus;

/** Asks a server, one request at a time. One thread; another may close it. */
public interface ModbusClient extends AutoCloseable {

  /**
   * Sends a request and waits for its answer. A line that is down is opened, at most once a call.
   *
   * @param pdu function code and data
   */
  Reply ask(Pdu pdu);

  /** Reads input registers (function 4), at most 125. */
  default Reply readInputRegisters(int address, int quantity) {
    return ask(Requests.read(4, address, quantity));
  }

  /** Reads holding registers (function 3), at most 125. */
  default Reply readHoldingRegisters(int address, int quantity) {
    return ask(Requests.read(3, address, quantity));
  }

  /** Writes holding registers (function 16), at most 123. */
  default Reply writeRegisters(int address, int... values) {
    return ask(Requests.writeRegisters(address, values));
  }

  /** The line is closed and not opened again. */
  @Override
  void close();

  /** What became of a request. */
  sealed interface Reply {

    /**
     * The server's answer.
     *
     * @param pdu function code and data
     */
    record Answer(Pdu pdu) implements Reply {

      /** A register of an answer to a read, 0 to 65535. */
      public int register(int index) {
        return pdu.word(2 + 2 * index);
      }

      /** How many registers an answer to a read holds. */
      public int registers() {
        return (pdu.length() - 2) / 2;
      }
    }

    /**
     * The server refused.
     *
     * @param code exception code of the application protocol, section 7
     */
    record Refused(int code) implements Reply {}

    /** No answer came in time. */
    record Silent() implements Reply {}

    /** What came was no whole answer to this request. */
    record Garbled() implements Reply {}

    /**
     * There is no line.
     *
     * @param why one sentence
     */
    record Down(String why) implements Reply {}
  }
}
