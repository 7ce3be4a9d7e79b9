package trayward.controller.transmitter;

/** The line that transmitters hang on. Used by the transmitter thread alone. */
public interface RegisterLine extends AutoCloseable {

  /**
   * Reads registers. Waits for the answer, a second at the most; never throws.
   *
   * @param unit address on the line
   * @param function 3 or 4
   * @param register first one, from 0
   * @param count how many
   */
  Answer read(int unit, int function, int register, int count);

  @Override
  void close();
}
