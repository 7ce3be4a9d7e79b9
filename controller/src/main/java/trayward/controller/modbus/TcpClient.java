package trayward.controller.modbus;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import org.jspecify.annotations.Nullable;

/** A client on loopback TCP. One thread asks; another may close. */
public final class TcpClient implements ModbusClient {

  private final int port;
  private final int unit;
  private final int patienceMs;
  private volatile @Nullable Socket socket;
  private volatile boolean closed;
  private int transaction;

  /**
   * A client that connects with the first request.
   *
   * @param port TCP port on loopback
   * @param unit unit identifier
   * @param patienceMs longest wait for a connection or an answer, ms
   */
  public TcpClient(int port, int unit, int patienceMs) {
    this.port = port;
    this.unit = unit;
    this.patienceMs = patienceMs;
  }

  @Override
  public Reply ask(Pdu pdu) {
    try {
      return exchange(connected(), pdu);
    } catch (SocketTimeoutException e) {
      drop(); // its answer may still come, and would answer nothing
      return new Reply.Silent();
    } catch (IOException e) {
      drop();
      return new Reply.Down("TCP port " + port + ": " + e.getMessage());
    }
  }

  private Socket connected() throws IOException {
    Socket now = socket;
    if (now != null) {
      return now;
    }
    if (closed) {
      throw new IOException("the line was closed");
    }
    Socket fresh = new Socket();
    try {
      fresh.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), patienceMs);
      fresh.setTcpNoDelay(true);
      fresh.setSoTimeout(patienceMs);
    } catch (IOException e) {
      fresh.close();
      throw e;
    }
    socket = fresh;
    return fresh;
  }

  private Reply exchange(Socket open, Pdu pdu) throws IOException {
    transaction = (transaction + 1) & 0xFFFF;
    open.getOutputStream().write(new Mbap(transaction, unit, pdu).encode());
    Mbap answer = Mbap.read(open.getInputStream());
    return answer.transaction() == transaction && answer.unit() == unit
        ? Requests.judge(pdu, answer.pdu())
        : new Reply.Garbled();
  }

  private void drop() {
    Socket now = socket;
    socket = null;
    if (now != null) {
      try {
        now.close();
      } catch (IOException e) {
        // It is gone either way.
      }
    }
  }

  @Override
  public void close() {
    closed = true;
    drop();
  }
}
