package trayward.controller.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import trayward.controller.modbus.ModbusClient.Reply;

class ClientsTest {

  private static final Responder RESPONDER =
      new Responder(
          ExampleRegisters.ofTheStandard(), new DeviceIdentity(List.of("vendor", "code", "1.0")));

  private static byte[] hex(String text) {
    return HexFormat.ofDelimiter(" ").parseHex(text);
  }

  /** What a client makes of an answer that comes over a serial line. */
  private static Reply reply(byte[]... pieces) {
    ScriptedLine line = new ScriptedLine();
    line.hear(pieces);
    try (RtuClient client = new RtuClient(() -> line, 1, 25)) {
      return client.readHoldingRegisters(0x6B, 3);
    }
  }

  @Test
  void theAnswerOfTheStandardIsRead() {
    Reply.Answer answer =
        assertInstanceOf(
            Reply.Answer.class, reply(hex("01 03 06 02 2B"), hex("00 00 00 64 05 7A")));
    assertEquals(3, answer.registers());
    assertEquals(0x022B, answer.register(0));
    assertEquals(0x0064, answer.register(2));
  }

  @Test
  void anExceptionIsARefusalWithItsCode() {
    assertEquals(new Reply.Refused(2), reply(RtuFrame.encode(1, new Pdu(hex("83 02")))));
  }

  @Test
  void whatIsNoAnswerToTheRequestIsGarbled() {
    Reply garbled = new Reply.Garbled();
    assertEquals(garbled, reply(hex("01 03 06 02 2B 00 00 00 64 05 7B")), "check sum");
    assertEquals(garbled, reply(hex("01 03 06 02 2B 00 00")), "cut short");
    assertEquals(garbled, reply(RtuFrame.encode(2, new Pdu(hex("83 02")))), "another unit");
    assertEquals(garbled, reply(RtuFrame.encode(1, new Pdu(hex("03 04 02 2B 00 00")))), "fewer");
    assertEquals(garbled, reply(RtuFrame.encode(1, new Pdu(hex("04 06 02 2B 00 00 00 64")))));
  }

  @Test
  void noAnswerIsSilence() {
    assertEquals(new Reply.Silent(), reply());
  }

  @Test
  void aLineThatIsNotThereIsSaidInItsWordsAndTriedAgain() {
    ScriptedLine line = new ScriptedLine();
    boolean[] there = {false};
    RtuClient client =
        new RtuClient(
            () -> {
              if (!there[0]) {
                throw new IOException("serial port X is not there");
              }
              return line;
            },
            1,
            25);
    assertEquals(
        new Reply.Down("serial port X is not there"), client.readHoldingRegisters(0x6B, 3));
    there[0] = true;
    line.hear(hex("01 03 06 02 2B 00 00 00 64 05 7A"));
    assertInstanceOf(Reply.Answer.class, client.readHoldingRegisters(0x6B, 3));
    client.close();
    assertInstanceOf(Reply.Down.class, client.readHoldingRegisters(0x6B, 3));
  }

  @Test
  void aSerialPortThatIsNotThereIsNamed() {
    SerialSettings settings =
        new SerialSettings("/no/such/port", 115_200, SerialSettings.Parity.NONE, 1);
    try (RtuClient client = new RtuClient(() -> SerialLine.open(settings), 1, 25)) {
      assertEquals(
          new Reply.Down("serial port /no/such/port is not there"),
          client.readInputRegisters(0, 1));
    }
  }

  @Test
  void overLoopbackAClientIsAnsweredAndRefused() throws IOException {
    try (TcpServer server = new TcpServer(0, RESPONDER);
        TcpClient client = new TcpClient(server.port(), 1, 5000)) {
      server.start();
      Reply.Answer answer =
          assertInstanceOf(Reply.Answer.class, client.readHoldingRegisters(0x6B, 3));
      assertEquals(0x022B, answer.register(0));
      assertEquals(new Reply.Refused(2), client.readInputRegisters(9, 1));
      assertInstanceOf(Reply.Answer.class, client.writeRegisters(1, 7, 8));
    }
  }

  @Test
  void aServerThatWentAndCameBackIsFoundAgain() throws IOException {
    TcpServer first = new TcpServer(0, RESPONDER);
    int port = first.port();
    first.start();
    try (TcpClient client = new TcpClient(port, 1, 5000)) {
      assertInstanceOf(Reply.Answer.class, client.readInputRegisters(8, 1));
      first.close();
      assertInstanceOf(Reply.Down.class, client.readInputRegisters(8, 1));
      assertInstanceOf(Reply.Down.class, client.readInputRegisters(8, 1));
      try (TcpServer second = new TcpServer(port, RESPONDER)) {
        second.start();
        assertInstanceOf(Reply.Answer.class, client.readInputRegisters(8, 1));
      }
    }
  }

  /** A client that connects again and again: whenever the server closes, none is left to serve. */
  @Test
  void aServerThatClosesLetsNobodyInAnyMore() throws Exception {
    for (int round = 0; round < 50; round++) {
      TcpServer server = new TcpServer(0, RESPONDER);
      server.start();
      try (TcpClient client = new TcpClient(server.port(), 1, 5000)) {
        Thread closer = new Thread(server::close);
        closer.start();
        while (closer.isAlive()) {
          client.readInputRegisters(8, 1); // and connects anew where it was thrown out
        }
        closer.join();
        client.readInputRegisters(8, 1); // one that was let in last is told here
        assertInstanceOf(Reply.Down.class, client.readInputRegisters(8, 1));
      }
    }
  }

  @Test
  void aConnectionThatSpeaksAnotherProtocolIsClosed() throws IOException {
    try (TcpServer server = new TcpServer(0, RESPONDER);
        Socket stranger = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      server.start();
      stranger.setSoTimeout(5000);
      stranger
          .getOutputStream()
          .write("GET / HTTP/1.1\r\n\r\n".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
      assertTrue(ended(stranger));
    }
  }

  /** The end of the stream, or a reset where something was still unread. */
  private static boolean ended(Socket socket) throws IOException {
    try {
      return socket.getInputStream().read() < 0;
    } catch (SocketException e) {
      return true;
    }
  }

  @Test
  void aFifthConnectionIsTurnedAwayAndTheFirstFourGoOn() throws IOException {
    try (TcpServer server = new TcpServer(0, RESPONDER)) {
      server.start();
      TcpClient[] four = new TcpClient[4];
      for (int i = 0; i < four.length; i++) {
        four[i] = new TcpClient(server.port(), 1, 5000);
        assertInstanceOf(Reply.Answer.class, four[i].readInputRegisters(8, 1));
      }
      try (TcpClient fifth = new TcpClient(server.port(), 1, 5000)) {
        assertInstanceOf(Reply.Down.class, fifth.readInputRegisters(8, 1));
      }
      for (TcpClient client : four) {
        assertInstanceOf(Reply.Answer.class, client.readInputRegisters(8, 1));
        client.close();
      }
    }
  }

  @Test
  void aPortThatIsTakenIsRefused() throws IOException {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      boolean refused = false;
      try {
        new TcpServer(taken.getLocalPort(), RESPONDER).close();
      } catch (IOException e) {
        refused = true;
      }
      assertTrue(refused);
    }
  }
}
