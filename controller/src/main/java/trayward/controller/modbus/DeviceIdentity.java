package trayward.controller.modbus;

import com.digitalpetri.modbus.ExceptionCode;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Read Device Identification, function 43/14 ("MODBUS Application Protocol Specification" V1.1b3,
 * 6.21). The basic category: vendor, product code, revision; as a stream or one by one. Immutable.
 *
 * @param basic texts of the objects 0, 1 and 2, ASCII, short enough for one answer
 */
public record DeviceIdentity(List<String> basic) {

  private static final int READ_DEVICE_ID = 14;
  private static final int BASIC = 1;
  private static final int REGULAR = 2;
  private static final int EXTENDED = 3;
  private static final int SPECIFIC = 4;

  /** Basic identification, stream access and individual access. */
  private static final int CONFORMITY = 0x81;

  /** Longest text, bytes: all three fit one answer of 253 bytes with their heads. */
  private static final int MAX_TEXT = 60;

  /** Checks the texts. */
  public DeviceIdentity {
    basic = List.copyOf(basic);
    if (basic.size() != 3 || basic.stream().anyMatch(t -> t.length() > MAX_TEXT)) {
      throw new IllegalArgumentException("three texts of at most " + MAX_TEXT + " characters");
    }
  }

  byte[] answer(byte[] pdu) {
    if (pdu.length < 2 || pdu[1] != READ_DEVICE_ID) {
      return ExceptionReply.of(43, ExceptionCode.ILLEGAL_FUNCTION);
    }
    int code = pdu.length == 4 ? pdu[2] & 0xFF : 0;
    int object = pdu.length == 4 ? pdu[3] & 0xFF : 0;
    return switch (code) {
      // More than is there is answered with what is there; an unknown object restarts the stream.
      case BASIC, REGULAR, EXTENDED -> objects(code, object < basic.size() ? object : 0, 3);
      case SPECIFIC ->
          object < basic.size()
              ? objects(code, object, object + 1)
              : ExceptionReply.of(43, ExceptionCode.ILLEGAL_DATA_ADDRESS);
      default -> ExceptionReply.of(43, ExceptionCode.ILLEGAL_DATA_VALUE);
    };
  }

  private byte[] objects(int code, int from, int to) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {43, READ_DEVICE_ID, (byte) code, (byte) CONFORMITY, 0, 0});
    out.write(to - from);
    for (int i = from; i < to; i++) {
      byte[] text = basic.get(i).getBytes(StandardCharsets.US_ASCII);
      out.write(i);
      out.write(text.length);
      out.writeBytes(text);
    }
    return out.toByteArray();
  }
}
