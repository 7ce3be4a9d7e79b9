package trayward.controller.watchdog;

import com.sun.jna.LastErrorException;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Sends datagrams to a local socket of Linux, which Java 17 cannot: it knows local sockets as
 * streams only. Never waits: where the reader's queue is full, the datagram is refused. One thread.
 */
final class UnixDatagrams implements AutoCloseable {

  // Linux, asm-generic and the ARM and x86 families alike: unix(7), socket(2), send(2).
  private static final int AF_UNIX = 1;
  private static final int SOCK_DGRAM = 2;
  private static final int SOCK_CLOEXEC = 0x80000;
  private static final int MSG_DONTWAIT = 0x40;
  private static final int MSG_NOSIGNAL = 0x4000;

  /** {@code sun_path} holds 108 bytes with the zero at its end: unix(7). */
  private static final int MOST_PATH_BYTES = 107;

  static {
    Native.register(Platform.C_LIBRARY_NAME);
  }

  private final int socket;
  private final byte[] address;

  private UnixDatagrams(int socket, byte[] address) {
    this.socket = socket;
    this.address = address;
  }

  /**
   * A way to the socket of this name.
   *
   * @param name a path from the root, or {@code @} and a name in the abstract namespace
   * @throws IOException where the name is none, or the system gives no socket
   */
  static UnixDatagrams to(String name) throws IOException {
    byte[] address = address(name);
    try {
      return new UnixDatagrams(socket(AF_UNIX, SOCK_DGRAM | SOCK_CLOEXEC, 0), address);
    } catch (LastErrorException e) {
      throw new IOException("no local socket: " + e.getMessage(), e);
    }
  }

  /**
   * {@code sockaddr_un}: the family in the machine's order, then the path, or a zero and a name.
   */
  static byte[] address(String name) throws IOException {
    byte[] path = name.getBytes(StandardCharsets.UTF_8);
    boolean known = name.startsWith("/") || name.startsWith("@");
    if (!known || path.length < 2 || path.length > MOST_PATH_BYTES) {
      throw new IOException(
          "found '"
              + name
              + "', accepted is a path from the root, or @ and a name, of at most "
              + MOST_PATH_BYTES
              + " bytes");
    }
    if (path[0] == '@') {
      path[0] = 0;
    }
    return ByteBuffer.allocate(2 + path.length)
        .order(ByteOrder.nativeOrder())
        .putShort((short) AF_UNIX)
        .put(path)
        .array();
  }

  void send(String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    try {
      var unused =
          sendto(
              socket,
              bytes,
              new NativeLong(bytes.length),
              MSG_DONTWAIT | MSG_NOSIGNAL,
              address,
              address.length);
    } catch (LastErrorException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  @Override
  public void close() throws IOException {
    try {
      var unused = close(socket);
    } catch (LastErrorException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  private static native int socket(int family, int type, int protocol) throws LastErrorException;

  private static native NativeLong sendto(
      int socket, byte[] what, NativeLong length, int flags, byte[] to, int toLength)
      throws LastErrorException;

  private static native int close(int socket) throws LastErrorException;
}
