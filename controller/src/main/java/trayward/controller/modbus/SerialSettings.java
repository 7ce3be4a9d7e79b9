package trayward.controller.modbus;

import trayward.controller.quantity.Range;

/**
 * How a serial port is set.
 *
 * @param path device, such as {@code /dev/ttyUSB0}
 * @param baud bits a second
 * @param parity parity bit
 * @param stopBits 1 or 2
 */
public record SerialSettings(String path, int baud, Parity parity, int stopBits) {

  /** The usual speeds lie within; slower ones would not carry a status in the time it is good. */
  public static final Range BAUD = new Range(9600, 921_600, "baud");

  /** Quick enough for a status four times a second, slow enough for any adapter. */
  public static final int DEFAULT_BAUD = 115_200;

  /** The parity bit. */
  public enum Parity {
    /** None; the guide then asks for two stop bits. */
    NONE,
    /** Even: the guide's default. */
    EVEN,
    /** Odd. */
    ODD
  }
}
