package trayward.controller.modbus;

import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import com.digitalpetri.modbus.pdu.WriteMultipleRegistersRequest;
import java.nio.ByteBuffer;
import java.util.Arrays;

/** Requests as bytes, and whether an answer fits its request. Pure. */
final class Requests {

  private Requests() {}

  static Pdu read(int function, int address, int quantity) {
    ByteBuffer out = ByteBuffer.allocate(5);
    if (function == 3) {
      ReadHoldingRegistersRequest.Serializer.encode(
          new ReadHoldingRegistersRequest(address, quantity), out);
    } else {
      ReadInputRegistersRequest.Serializer.encode(
          new ReadInputRegistersRequest(address, quantity), out);
    }
    return new Pdu(out.array());
  }

  static Pdu writeRegisters(int address, int[] values) {
    ByteBuffer words = ByteBuffer.allocate(2 * values.length);
    for (int value : values) {
      words.putShort((short) value);
    }
    ByteBuffer out = ByteBuffer.allocate(6 + 2 * values.length);
    WriteMultipleRegistersRequest.Serializer.encode(
        new WriteMultipleRegistersRequest(address, values.length, words.array()), out);
    return new Pdu(out.array());
  }

  /** What an answer's data unit says to a request. */
  static ModbusClient.Reply judge(Pdu request, Pdu answer) {
    if (answer.length() == 2 && answer.at(0) == (request.at(0) | 0x80)) {
      return new ModbusClient.Reply.Refused(answer.at(1));
    }
    return fits(request, answer)
        ? new ModbusClient.Reply.Answer(answer)
        : new ModbusClient.Reply.Garbled();
  }

  private static boolean fits(Pdu request, Pdu answer) {
    if (answer.length() < 2 || answer.at(0) != request.at(0)) {
      return false;
    }
    return switch (request.at(0)) {
      case 1, 2 -> carries(answer, (request.word(3) + 7) / 8);
      case 3, 4 -> carries(answer, 2 * request.word(3));
      case 5, 6, 15, 16 -> Arrays.equals(answer.bytes(), Arrays.copyOf(request.bytes(), 5));
      default -> true;
    };
  }

  private static boolean carries(Pdu answer, int bytes) {
    return answer.at(1) == bytes && answer.length() == 2 + bytes;
  }
}
