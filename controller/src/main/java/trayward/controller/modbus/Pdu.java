package trayward.controller.modbus;

import java.util.Arrays;

/** A protocol data unit: function code and data. Immutable. */
public final class Pdu {

  private final byte[] bytes;

  /** A unit of these bytes, which are copied. */
  public Pdu(byte... bytes) {
    this.bytes = bytes.clone();
  }

  /** How many bytes. */
  public int length() {
    return bytes.length;
  }

  /** A byte, 0 to 255. */
  public int at(int index) {
    return bytes[index] & 0xFF;
  }

  /** Two bytes, high one first, 0 to 65535. */
  public int word(int index) {
    return (at(index) << 8) | at(index + 1);
  }

  /** All of them. */
  public byte[] bytes() {
    return bytes.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Pdu pdu && Arrays.equals(bytes, pdu.bytes);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    return java.util.HexFormat.ofDelimiter(" ").formatHex(bytes);
  }
}
