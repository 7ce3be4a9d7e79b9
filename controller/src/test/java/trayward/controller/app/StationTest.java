package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.modbus.ModbusClient.Reply;
import trayward.controller.modbus.Pdu;

/** The controller's registers, from outside, over loopback TCP. */
@Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class StationTest {

  private static final int STOP = 1;
  private static final int START = 2;
  private static final int SET = 6;
  private static final int DONE = 2;
  private static final int REFUSED = 3;

  @TempDir private Path folder;
  private StationBench bench;
  private int token;

  @BeforeEach
  void start() throws Exception {
    bench = StationBench.tcp(folder);
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private int input(int address) {
    return assertInstanceOf(Reply.Answer.class, bench.client.readInputRegisters(address, 1))
        .register(0);
  }

  /** Sends a command and gives its result once there is one; the test's time-out bounds it. */
  private int command(int code, int argument) {
    token++;
    assertInstanceOf(
        Reply.Answer.class, bench.client.writeRegisters(0, token, code, argument), "written");
    while (true) {
      Reply.Answer answer =
          assertInstanceOf(Reply.Answer.class, bench.client.readInputRegisters(42, 2));
      if (answer.register(0) == token && answer.register(1) != 1) {
        return answer.register(1);
      }
    }
  }

  @Test
  void aSetTemperatureIsTakenAndReadBack() {
    assertEquals(DONE, command(SET, 3850));
    assertEquals(3850, input(6));
    assertEquals(REFUSED, command(SET, 6000), "60 °C is above every range (SR-06)");
    assertEquals(3850, input(6));
  }

  @Test
  void aTokenActsOnceHoweverOftenItIsWritten() {
    assertEquals(DONE, command(SET, 3000));
    assertInstanceOf(Reply.Answer.class, bench.client.writeRegisters(0, token, SET, 4500));
    assertEquals(DONE, command(START, 0), "the next command has its own token");
    assertEquals(3000, input(6));
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopIsTakenAsACommandAndAsACoil() {
    assertEquals(DONE, command(START, 0));
    assertEquals(DONE, command(STOP, 0));
    awaitState(0);
    assertEquals(DONE, command(START, 0));
    Pdu coil = new Pdu((byte) 5, (byte) 0, (byte) 0, (byte) 0xFF, (byte) 0);
    assertInstanceOf(Reply.Answer.class, bench.client.ask(coil));
    awaitState(0);
  }

  /** Waits for a state; the test's time-out bounds it. */
  private void awaitState(int state) {
    while (input(2) != state) {
      Thread.onSpinWait();
    }
  }

  @Test
  void halfACommandIsRefusedAndActsNot() {
    assertEquals(new Reply.Refused(3), bench.client.writeRegisters(1, START));
    assertEquals(new Reply.Refused(3), bench.client.writeRegisters(0, 77, START));
    assertEquals(new Reply.Refused(3), bench.client.writeRegisters(2, 1, 1));
    assertEquals(0, input(42));
    assertEquals(0, input(2));
  }

  @Test
  void whatIsNotThereIsRefusedByTheStandardsCodes() {
    assertEquals(new Reply.Refused(2), bench.client.readInputRegisters(90, 1));
    assertEquals(new Reply.Refused(2), bench.client.writeRegisters(6, 1));
    assertEquals(new Reply.Refused(1), bench.client.ask(new Pdu((byte) 7)));
    assertEquals(5, command(999, 0), "no such command");
  }

  /** SR-16: a heartbeat that changes feeds, reads and a number that stays do not. */
  @Test
  @Verifies(value = "SR-16", side = Side.ALLOWS)
  void theHeartbeatReachesTheController() {
    assertInstanceOf(Reply.Answer.class, bench.client.writeRegisters(3, 7));
    assertEquals(
        7,
        assertInstanceOf(Reply.Answer.class, bench.client.readHoldingRegisters(3, 1)).register(0));
  }

  @Test
  void theScanCounterOfOneReadIsTheSameInBothItsForms() {
    Reply.Answer answer =
        assertInstanceOf(Reply.Answer.class, bench.client.readInputRegisters(0, 72));
    assertEquals(answer.register(1), answer.register(11), "low words of one moment");
    assertEquals(1, answer.register(0), "version of the map");
    assertTrue(answer.register(3) > 1800 && answer.register(3) < 2200, "a bath of 20 °C");
  }

  @Test
  void itSaysWhatItIs() {
    Pdu identify = new Pdu((byte) 43, (byte) 14, (byte) 1, (byte) 0);
    Reply.Answer answer = assertInstanceOf(Reply.Answer.class, bench.client.ask(identify));
    String text = new String(answer.pdu().bytes(), java.nio.charset.StandardCharsets.US_ASCII);
    assertTrue(text.contains("trayward") && text.contains("tray controller"), text);
  }
}
