package trayward.controller.modbus;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;

/**
 * Framing on TCP: a head of seven bytes before the data unit ("MODBUS Messaging on TCP/IP
 * Implementation Guide" V1.0b, 3.1.3). Pure but for the stream it reads.
 *
 * @param transaction number that the answer repeats
 * @param unit unit identifier
 * @param pdu function code and data
 */
record Mbap(int transaction, int unit, Pdu pdu) {

  private static final int HEAD = 7;

  /** Longest data unit, bytes (application protocol, section 4.1). */
  private static final int MAX_PDU = 253;

  byte[] encode() {
    byte[] frame = new byte[HEAD + pdu.length()];
    frame[0] = (byte) (transaction >> 8);
    frame[1] = (byte) transaction;
    int length = pdu.length() + 1;
    frame[4] = (byte) (length >> 8);
    frame[5] = (byte) length;
    frame[6] = (byte) unit;
    System.arraycopy(pdu.bytes(), 0, frame, HEAD, pdu.length());
    return frame;
  }

  /**
   * Reads one frame.
   *
   * @throws IOException where the stream ends, or what comes is no such frame: after that nobody
   *     knows where the next one begins, and the connection must go
   */
  static Mbap read(InputStream in) throws IOException {
    byte[] head = in.readNBytes(HEAD);
    if (head.length < HEAD) {
      throw new EOFException("the other end has gone");
    }
    int length = word(head, 4);
    if (word(head, 2) != 0 || length < 2 || length > MAX_PDU + 1) {
      throw new IOException("what came is no frame of this protocol");
    }
    byte[] pdu = in.readNBytes(length - 1);
    if (pdu.length < length - 1) {
      throw new EOFException("the other end has gone");
    }
    return new Mbap(word(head, 0), head[6] & 0xFF, new Pdu(pdu));
  }

  private static int word(byte[] bytes, int at) {
    return ((bytes[at] & 0xFF) << 8) | (bytes[at + 1] & 0xFF);
  }
}
