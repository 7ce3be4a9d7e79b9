package trayward.controller.modbus;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A server on loopback TCP: a thread that accepts, and one for each of a few connections. It is
 * never bound to another address: whoever reaches it may command the tray.
 */
public final class TcpServer implements AutoCloseable {

  /** A host, somebody looking on, and two that have gone and are not yet missed. */
  private static final int MAX_CONNECTIONS = 4;

  /**
   * A connection that asks nothing for so long is given up, ms; a host asks four times a second.
   */
  private static final int IDLE_MS = 60_000;

  /** Unit identifiers of a server that is no gateway (TCP guide, 4.4.2), and its own. */
  private static final Set<Integer> UNITS = Set.of(0, 1, 255);

  private static final Logger LOG = LoggerFactory.getLogger(TcpServer.class);

  private final ServerSocket socket;
  private final Responder responder;
  private final Thread thread;
  private final Set<Socket> connections = ConcurrentHashMap.newKeySet();

  /**
   * Takes a port; {@link #start} serves it.
   *
   * @param port TCP port on loopback; 0 for any free one
   * @param responder makes the answers
   * @throws IOException where the port is taken
   */
  public TcpServer(int port, Responder responder) throws IOException {
    this.responder = responder;
    this.socket = new ServerSocket();
    socket.setReuseAddress(true);
    try {
      socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), MAX_CONNECTIONS);
    } catch (IOException e) {
      socket.close();
      throw e;
    }
    this.thread = new Thread(this::acceptUntilClosed, "station");
    thread.setDaemon(true);
  }

  /** Starts serving. */
  public void start() {
    thread.start();
  }

  /** The port that was taken. */
  public int port() {
    return socket.getLocalPort();
  }

  private void acceptUntilClosed() {
    while (!socket.isClosed()) {
      try {
        accept(socket.accept());
      } catch (IOException | RuntimeException e) {
        if (!socket.isClosed()) {
          LOG.warn("a host could not connect: {}", e.getMessage());
        }
      }
    }
  }

  private void accept(Socket connection) throws IOException {
    if (connections.size() >= MAX_CONNECTIONS) {
      connection.close();
      return;
    }
    connection.setTcpNoDelay(true);
    connection.setSoTimeout(IDLE_MS);
    connections.add(connection);
    if (socket.isClosed()) { // it was let in while this server closed
      connection.close();
    }
    Thread server = new Thread(() -> serve(connection), "station-connection");
    server.setDaemon(true);
    server.start();
  }

  private void serve(Socket connection) {
    try (connection) {
      while (true) {
        Mbap request = Mbap.read(connection.getInputStream());
        if (UNITS.contains(request.unit())) {
          Pdu answer = responder.answer(request.pdu());
          Mbap frame = new Mbap(request.transaction(), request.unit(), answer);
          connection.getOutputStream().write(frame.encode());
        }
      }
    } catch (IOException e) {
      LOG.debug("a connection ends: {}", e.getMessage());
    } finally {
      connections.remove(connection);
    }
  }

  @Override
  public void close() {
    try {
      socket.close();
      for (Socket connection : connections) {
        connection.close();
      }
      thread.join(TimeUnit.SECONDS.toMillis(1));
    } catch (IOException e) {
      LOG.debug("closing: {}", e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
