package trayward.controller.transmitter;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import trayward.controller.modbus.ByteLine;
import trayward.controller.modbus.ModbusClient.Reply;
import trayward.controller.modbus.RtuClient;

/**
 * Modbus RTU on one serial line, opened with the first request and again whenever it was lost. One
 * thread.
 */
public final class RtuRegisterLine implements RegisterLine {

  /** Longest wait for an answer, ms: three silent transmitters cost a round of 1.5 s. */
  private static final int PATIENCE_MS = 500;

  /** Rest between an answer and the next request: 3.5 characters at 1200 baud are 32 ms. */
  private static final long GAP_NANOS = TimeUnit.MILLISECONDS.toNanos(35);

  private static final int HOLDING = 3;

  private final ByteLine.Opener opener;
  private final Map<Integer, RtuClient> clients = new HashMap<>(); // one a unit, at most 247
  private @Nullable Shared line;

  /** A line that {@code opener} opens. */
  public RtuRegisterLine(ByteLine.Opener opener) {
    this.opener = opener;
  }

  @Override
  public Answer read(int unit, int function, int register, int count) {
    RtuClient client =
        clients.computeIfAbsent(unit, u -> new RtuClient(this::opened, u, PATIENCE_MS));
    Reply reply =
        function == HOLDING
            ? client.readHoldingRegisters(register, count)
            : client.readInputRegisters(register, count);
    LockSupport.parkNanos(GAP_NANOS);
    return answer(reply, unit);
  }

  private static Answer answer(Reply reply, int unit) {
    if (reply instanceof Reply.Answer came) {
      int[] values = new int[came.registers()];
      for (int i = 0; i < values.length; i++) {
        values[i] = came.register(i);
      }
      return new Answer.Registers(values);
    }
    if (reply instanceof Reply.Garbled) {
      return new Answer.CheckSumWrong();
    }
    String why =
        reply instanceof Reply.Down down
            ? down.why()
            : reply instanceof Reply.Refused refused
                ? "unit " + unit + " refuses with exception " + refused.code()
                : "unit " + unit + " is silent";
    return new Answer.Nothing(why);
  }

  private ByteLine opened() throws IOException {
    Shared now = line;
    if (now == null || now.closed) {
      now = new Shared(opener.open());
      line = now;
    }
    return now;
  }

  @Override
  public void close() {
    clients.values().forEach(RtuClient::close);
    Shared now = line;
    if (now != null) {
      now.close();
    }
  }

  /** One line for the clients of all units: whoever finds it gone closes it for all. */
  private static final class Shared implements ByteLine {

    private final ByteLine line;
    private boolean closed;

    Shared(ByteLine line) {
      this.line = line;
    }

    @Override
    public int read(byte[] into, int offset) throws IOException {
      return line.read(into, offset);
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      line.write(bytes);
    }

    @Override
    public void discard() throws IOException {
      if (closed) {
        throw new IOException("the serial line was lost");
      }
      line.discard();
    }

    @Override
    public void close() {
      if (!closed) {
        closed = true;
        line.close();
      }
    }
  }
}
