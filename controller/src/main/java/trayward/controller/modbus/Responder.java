package trayward.controller.modbus;

import com.digitalpetri.modbus.ExceptionCode;
import com.digitalpetri.modbus.pdu.ReadCoilsResponse;
import com.digitalpetri.modbus.pdu.ReadDiscreteInputsResponse;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersResponse;
import com.digitalpetri.modbus.pdu.ReadInputRegistersResponse;
import com.digitalpetri.modbus.pdu.WriteMultipleCoilsRequest;
import com.digitalpetri.modbus.pdu.WriteMultipleRegistersRequest;
import com.digitalpetri.modbus.pdu.WriteSingleCoilRequest;
import com.digitalpetri.modbus.pdu.WriteSingleRegisterRequest;
import java.nio.ByteBuffer;
import java.util.function.IntUnaryOperator;

/**
 * Turns a request into its answer ("MODBUS Application Protocol Specification" V1.1b3, section 6).
 * Lengths and quantities are judged here before the library takes a request apart: it trusts them.
 * Stateless; any thread.
 */
public final class Responder {

  /** Most bits of one read (6.1). */
  private static final int MAX_READ_BITS = 2000;

  /** Most registers of one read (6.3). */
  private static final int MAX_READ_REGISTERS = 125;

  /** Most coils of one write (6.11). */
  private static final int MAX_WRITE_COILS = 1968;

  /** Most registers of one write (6.12). */
  private static final int MAX_WRITE_REGISTERS = 123;

  private static final int COIL_ON = 0xFF00;

  private final Registers registers;
  private final DeviceIdentity identity;

  /** Answers for {@code registers}. */
  public Responder(Registers registers, DeviceIdentity identity) {
    this.registers = registers;
    this.identity = identity;
  }

  /** The answer to a request of at least one byte. Never throws. */
  public Pdu answer(Pdu request) {
    byte[] pdu = request.bytes();
    int function = request.at(0);
    try {
      byte[] answer =
          switch (function) {
            case 1, 2 -> readBits(function, pdu);
            case 3, 4 -> readRegisters(function, pdu);
            case 5 -> writeCoil(pdu);
            case 6 -> writeRegister(pdu);
            case 15 -> writeCoils(pdu);
            case 16 -> writeRegisters(pdu);
            case 43 -> identity.answer(pdu);
            default -> ExceptionReply.of(function, ExceptionCode.ILLEGAL_FUNCTION);
          };
      return new Pdu(answer);
    } catch (RuntimeException e) {
      // Whatever it was, the asker learns that nothing was done, and the server goes on.
      return new Pdu(ExceptionReply.of(function, ExceptionCode.SLAVE_DEVICE_FAILURE));
    }
  }

  private byte[] readBits(int function, byte[] pdu) {
    int quantity = quantity(pdu, 5, MAX_READ_BITS);
    if (quantity == 0) {
      return ExceptionReply.of(function, ExceptionCode.ILLEGAL_DATA_VALUE);
    }
    Registers.Image image = registers.image();
    IntUnaryOperator bit = function == 1 ? image::coil : image::discreteInput;
    byte[] bits = new byte[(quantity + 7) / 8];
    for (int i = 0; i < quantity; i++) {
      int value = bit.applyAsInt(address(pdu) + i);
      if (value == Registers.Image.NONE) {
        return ExceptionReply.of(function, ExceptionCode.ILLEGAL_DATA_ADDRESS);
      }
      bits[i / 8] |= (byte) (value << (i % 8));
    }
    ByteBuffer out = ByteBuffer.allocate(2 + bits.length);
    if (function == 1) {
      ReadCoilsResponse.Serializer.encode(new ReadCoilsResponse(bits), out);
    } else {
      ReadDiscreteInputsResponse.Serializer.encode(new ReadDiscreteInputsResponse(bits), out);
    }
    return out.array();
  }

  private byte[] readRegisters(int function, byte[] pdu) {
    int quantity = quantity(pdu, 5, MAX_READ_REGISTERS);
    if (quantity == 0) {
      return ExceptionReply.of(function, ExceptionCode.ILLEGAL_DATA_VALUE);
    }
    Registers.Image image = registers.image();
    IntUnaryOperator register = function == 3 ? image::holdingRegister : image::inputRegister;
    ByteBuffer words = ByteBuffer.allocate(2 * quantity);
    for (int i = 0; i < quantity; i++) {
      int value = register.applyAsInt(address(pdu) + i);
      if (value == Registers.Image.NONE) {
        return ExceptionReply.of(function, ExceptionCode.ILLEGAL_DATA_ADDRESS);
      }
      words.putShort((short) value);
    }
    ByteBuffer out = ByteBuffer.allocate(2 + 2 * quantity);
    if (function == 3) {
      ReadHoldingRegistersResponse.Serializer.encode(
          new ReadHoldingRegistersResponse(words.array()), out);
    } else {
      ReadInputRegistersResponse.Serializer.encode(
          new ReadInputRegistersResponse(words.array()), out);
    }
    return out.array();
  }

  private byte[] writeCoil(byte[] pdu) {
    if (pdu.length != 5) {
      return ExceptionReply.of(5, ExceptionCode.ILLEGAL_DATA_VALUE);
    }
    WriteSingleCoilRequest request = WriteSingleCoilRequest.Serializer.decode(ByteBuffer.wrap(pdu));
    if (request.value() != 0 && request.value() != COIL_ON) {
      return ExceptionReply.of(5, ExceptionCode.ILLEGAL_DATA_VALUE);
    }
    boolean[] one = {request.value() == COIL_ON};
    return written(pdu, pdu.length, registers.writeCoils(request.address(), one));
  }

  private byte[] writeRegister(byte[] pdu) {
    if (pdu.length != 5) {
      return ExceptionReply.of(6, ExceptionCode.ILLEGAL_DATA_VALUE);
    }
    WriteSingleRegisterRequest request =
        WriteSingleRegisterRequest.Serializer.decode(ByteBuffer.wrap(pdu));
    int[] one = {request.value()};
    return written(pdu, pdu.length, registers.writeRegisters(request.address(), one));
  }

  private byte[] writeCoils(byte[] pdu) {
    int quantity = pdu.length < 6 ? 0 : quantity(pdu, pdu.length, MAX_WRITE_COILS);
    if (quantity == 0 || !holds(pdu, (quantity + 7) / 8)) {
      return ExceptionReply.of(15, ExceptionCode.ILLEGAL_DATA_VALUE);
    }
    WriteMultipleCoilsRequest request =
        WriteMultipleCoilsRequest.Serializer.decode(ByteBuffer.wrap(pdu));
    boolean[] values = new boolean[quantity];
    for (int i = 0; i < quantity; i++) {
      values[i] = ((request.values()[i / 8] >> (i % 8)) & 1) == 1;
    }
    return written(pdu, 5, registers.writeCoils(request.address(), values));
  }

  private byte[] writeRegisters(byte[] pdu) {
    int quantity = pdu.length < 6 ? 0 : quantity(pdu, pdu.length, MAX_WRITE_REGISTERS);
    if (quantity == 0 || !holds(pdu, 2 * quantity)) {
      return ExceptionReply.of(16, ExceptionCode.ILLEGAL_DATA_VALUE);
    }
    WriteMultipleRegistersRequest request =
        WriteMultipleRegistersRequest.Serializer.decode(ByteBuffer.wrap(pdu));
    ByteBuffer words = ByteBuffer.wrap(request.values());
    int[] values = new int[quantity];
    for (int i = 0; i < quantity; i++) {
      values[i] = words.getShort() & 0xFFFF;
    }
    return written(pdu, 5, registers.writeRegisters(request.address(), values));
  }

  /** An accepted write echoes the head of its request. */
  private static byte[] written(byte[] pdu, int echoed, Registers.Written what) {
    int function = pdu[0] & 0xFF;
    return switch (what) {
      case DONE -> java.util.Arrays.copyOf(pdu, echoed);
      case NO_SUCH_ADDRESS -> ExceptionReply.of(function, ExceptionCode.ILLEGAL_DATA_ADDRESS);
      case WRONG_VALUE -> ExceptionReply.of(function, ExceptionCode.ILLEGAL_DATA_VALUE);
      case BUSY -> ExceptionReply.of(function, ExceptionCode.SLAVE_DEVICE_BUSY);
    };
  }

  private static int address(byte[] pdu) {
    return ((pdu[1] & 0xFF) << 8) | (pdu[2] & 0xFF);
  }

  /** How many are asked for; 0 where that, or the request's length, cannot be. */
  private static int quantity(byte[] pdu, int length, int most) {
    if (pdu.length != length) {
      return 0;
    }
    int quantity = ((pdu[3] & 0xFF) << 8) | (pdu[4] & 0xFF);
    return quantity <= most ? quantity : 0;
  }

  /** Whether the byte count of a write and what follows it are both {@code bytes}. */
  private static boolean holds(byte[] pdu, int bytes) {
    return (pdu[5] & 0xFF) == bytes && pdu.length == 6 + bytes;
  }
}
