package trayward.controller.modbus;

import com.digitalpetri.modbus.ExceptionCode;

/** Exception answers: function with its high bit set, and a code (application protocol, 7). */
final class ExceptionReply {

  private ExceptionReply() {}

  static byte[] of(int function, ExceptionCode code) {
    return new byte[] {(byte) (function | 0x80), (byte) code.getCode()};
  }
}
