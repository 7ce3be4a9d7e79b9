package trayward.host.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import trayward.controller.modbus.DeviceIdentity;
import trayward.controller.modbus.Pdu;
import trayward.controller.modbus.Registers;
import trayward.controller.modbus.Responder;
import trayward.controller.modbus.RtuFrame;
import trayward.controller.modbus.TcpServer;

/**
 * Spoilt frames of the open protocol: every request has an answer of its own function or an
 * exception, nothing is written that was not asked for in full, and a server that met nonsense
 * serves the next.
 */
@Timeout(600)
class FuzzedFramesTest {

  private static final int TRIED = 30_000 * Integer.getInteger("trayward.fuzz", 1);

  /** Requests of the specification's own examples (V1.1b3, sections 6.1 to 6.12 and 6.21). */
  private static final List<byte[]> GOOD =
      List.of(
          new byte[] {1, 0, 0x13, 0, 0x13},
          new byte[] {2, 0, (byte) 0xC4, 0, 0x16},
          new byte[] {3, 0, 0x6B, 0, 3},
          new byte[] {4, 0, 8, 0, 1},
          new byte[] {5, 0, (byte) 0xAC, (byte) 0xFF, 0},
          new byte[] {6, 0, 1, 0, 3},
          new byte[] {15, 0, 0x13, 0, 10, 2, (byte) 0xCD, 1},
          new byte[] {16, 0, 1, 0, 2, 4, 0, 10, 1, 2},
          new byte[] {43, 14, 1, 0});

  /** Two hundred of everything; counts what is written. */
  private static final class Counting implements Registers {

    long writes;

    private static int value(int address) {
      return address >= 0 && address < 200 ? address & 1 : Image.NONE;
    }

    @Override
    public Image image() {
      return new Image() {
        @Override
        public int coil(int address) {
          return value(address);
        }

        @Override
        public int discreteInput(int address) {
          return value(address);
        }

        @Override
        public int holdingRegister(int address) {
          return value(address);
        }

        @Override
        public int inputRegister(int address) {
          return value(address);
        }
      };
    }

    private Written write(int address, int count) {
      if (address + count > 200) {
        return Written.NO_SUCH_ADDRESS;
      }
      writes++;
      return Written.DONE;
    }

    @Override
    public Written writeCoils(int address, boolean[] values) {
      return write(address, values.length);
    }

    @Override
    public Written writeRegisters(int address, int[] values) {
      assertTrue(Arrays.stream(values).allMatch(v -> v >= 0 && v <= 65_535));
      return write(address, values.length);
    }
  }

  private static Responder responder(Registers registers) {
    return new Responder(registers, new DeviceIdentity(List.of("a", "b", "1")));
  }

  /** Whether a request is a whole write by the lengths it states itself. */
  private static boolean wholeWrite(byte[] pdu) {
    int count = pdu.length < 6 ? 0 : ((pdu[3] & 0xFF) << 8) | (pdu[4] & 0xFF);
    return switch (pdu[0]) {
      case 5, 6 -> pdu.length == 5;
      case 15 ->
          count > 0 && pdu.length == 6 + (count + 7) / 8 && (pdu[5] & 0xFF) == pdu.length - 6;
      case 16 -> count > 0 && pdu.length == 6 + 2 * count && (pdu[5] & 0xFF) == pdu.length - 6;
      default -> false;
    };
  }

  @Test
  void everyRequestIsAnsweredAndOnlyAWholeWriteWrites() {
    Mutations mutations = new Mutations(5);
    Counting registers = new Counting();
    Responder responder = responder(registers);
    long good = 0;
    for (int i = 0; i < TRIED; i++) {
      byte[] pdu = Arrays.copyOf(mutations.bytes(mutations.one(GOOD)), 253);
      int length = 1 + mutations.random().nextInt(24);
      pdu = Arrays.copyOf(pdu, length);
      long before = registers.writes;
      Pdu answer = responder.answer(new Pdu(pdu));
      int function = pdu[0] & 0xFF;
      assertTrue(answer.length() >= 2 && answer.length() <= 253, Arrays.toString(pdu));
      boolean exception = answer.at(0) == (function | 0x80) && answer.length() == 2;
      assertTrue(exception || answer.at(0) == function, Arrays.toString(pdu));
      assertTrue(
          registers.writes == before || (!exception && wholeWrite(pdu)), Arrays.toString(pdu));
      good += exception ? 0 : 1;
    }
    assertTrue(good > TRIED / 200 && good < TRIED, good + " of " + TRIED + " answered in full");
  }

  /** Bit by bit, as "MODBUS over Serial Line" V1.02 describes it in 6.2.2. */
  private static int crc16(byte[] bytes, int count) {
    int crc = 0xFFFF;
    for (int i = 0; i < count; i++) {
      crc ^= bytes[i] & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : crc >> 1 ^ 0xA001;
      }
    }
    return crc;
  }

  /** A frame changed at random passes its check by chance once in 65,536 (16 bits). */
  @Test
  void aFrameOnTheSerialLineIsTakenWithItsCheckSumOnly() {
    Mutations mutations = new Mutations(6);
    int whole = 0;
    for (int i = 0; i < TRIED; i++) {
      byte[] bytes = mutations.bytes(RtuFrame.encode(1, new Pdu(mutations.one(GOOD))));
      if (RtuFrame.parse(bytes, bytes.length) instanceof RtuFrame.Parsed.Whole taken) {
        whole++;
        int told = (bytes[bytes.length - 2] & 0xFF) | (bytes[bytes.length - 1] & 0xFF) << 8;
        assertEquals(told, crc16(bytes, bytes.length - 2));
        assertEquals(bytes.length - 3, taken.pdu().length());
      }
    }
    assertTrue(whole < TRIED / 10, whole + " of " + TRIED + " taken");
  }

  @Test
  void aServerThatMetNonsenseServesTheNext() throws Exception {
    Mutations mutations = new Mutations(7);
    byte[] good = {0, 1, 0, 0, 0, 6, 1, 4, 0, 8, 0, 1};
    try (TcpServer server = new TcpServer(0, responder(new Counting()))) {
      server.start();
      for (int i = 0; i < 100; i++) {
        try (Socket nonsense = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
          nonsense.getOutputStream().write(mutations.bytes(good));
        } catch (IOException e) {
          // The server may hang up in the middle of it.
        }
        assertServed(server.port(), good);
      }
    }
  }

  /** A connection that has just gone may not be missed yet, so another try is fair. */
  private static void assertServed(int port, byte[] good) throws Exception {
    byte[] answer = {};
    while (answer.length == 0) {
      try (Socket next = new Socket(InetAddress.getLoopbackAddress(), port)) {
        OutputStream out = next.getOutputStream();
        InputStream in = next.getInputStream();
        out.write(good);
        answer = in.readNBytes(11);
      } catch (SocketException e) {
        answer = new byte[0];
      }
    }
    assertEquals(4, answer[7]);
  }
}
