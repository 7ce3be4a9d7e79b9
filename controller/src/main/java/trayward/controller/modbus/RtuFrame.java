package trayward.controller.modbus;

import java.util.Arrays;

/**
 * One frame of the serial line: unit, protocol data unit, CRC ("MODBUS over Serial Line" V1.02,
 * 2.5.1). Pure.
 */
public final class RtuFrame {

  /** Longest frame, bytes: 1 of address, 253 of data unit, 2 of CRC (the same guide, 2.5.1). */
  public static final int MAX_BYTES = 256;

  /** Shortest frame, bytes: address, function, CRC. */
  public static final int MIN_BYTES = 4;

  private RtuFrame() {}

  /** What a run of bytes between two silences is. */
  public sealed interface Parsed {
    /**
     * A whole frame.
     *
     * @param unit whom it addresses
     * @param pdu function code and data
     */
    record Whole(int unit, Pdu pdu) implements Parsed {}

    /** A length that cannot be a frame. */
    record WrongLength() implements Parsed {}

    /** Its check sum fails. */
    record WrongCrc() implements Parsed {}
  }

  /** A frame of {@code pdu} for a unit. */
  public static byte[] encode(int unit, Pdu pdu) {
    byte[] frame = new byte[pdu.length() + 3];
    frame[0] = (byte) unit;
    System.arraycopy(pdu.bytes(), 0, frame, 1, pdu.length());
    int crc = Crc16.of(frame, pdu.length() + 1);
    frame[frame.length - 2] = (byte) crc;
    frame[frame.length - 1] = (byte) (crc >> 8);
    return frame;
  }

  /** Judges the first {@code length} bytes. */
  public static Parsed parse(byte[] bytes, int length) {
    if (length < MIN_BYTES || length > MAX_BYTES) {
      return new Parsed.WrongLength();
    }
    int told = (bytes[length - 2] & 0xFF) | ((bytes[length - 1] & 0xFF) << 8);
    return Crc16.of(bytes, length - 2) == told
        ? new Parsed.Whole(bytes[0] & 0xFF, new Pdu(Arrays.copyOfRange(bytes, 1, length - 2)))
        : new Parsed.WrongCrc();
  }

  /**
   * Length of an answer whose first bytes are these, as far as they tell it.
   *
   * @param bytes what has come
   * @param length how many of them
   * @return length of the whole frame, bytes; 0 while that cannot be told yet, -1 where the
   *     function tells no length and only silence ends it
   */
  static int answerLength(byte[] bytes, int length) {
    if (length < 2) {
      return 0;
    }
    int function = bytes[1] & 0xFF;
    if (function >= 0x80) {
      return 5; // address, function, exception code, CRC
    }
    return switch (function) {
      case 1, 2, 3, 4 -> length < 3 ? 0 : 5 + (bytes[2] & 0xFF);
      case 5, 6, 15, 16 -> 8;
      default -> -1;
    };
  }
}
