package trayward.controller.watchdog;

import com.sun.jna.LastErrorException;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** systemd's end of the line: a real datagram socket of the kernel, bound to a name. One thread. */
public final class NotifySocket implements AutoCloseable {

  private static final int AF_UNIX = 1;
  private static final int SOCK_DGRAM = 2;
  private static final int MSG_DONTWAIT = 0x40;
  private static final int EAGAIN = 11;

  static {
    Native.register(Platform.C_LIBRARY_NAME);
  }

  private final int socket;

  private NotifySocket(int socket) {
    this.socket = socket;
  }

  /** Binds a socket to a path or an {@code @} name. */
  public static NotifySocket at(String name) throws IOException {
    int socket = socket(AF_UNIX, SOCK_DGRAM, 0);
    byte[] address = UnixDatagrams.address(name);
    var unused = bind(socket, address, address.length);
    return new NotifySocket(socket);
  }

  /** The next datagram that waits; empty where none does. */
  public String next() {
    byte[] room = new byte[4096];
    try {
      int length = recv(socket, room, new NativeLong(room.length), MSG_DONTWAIT).intValue();
      return new String(Arrays.copyOf(room, length), StandardCharsets.UTF_8);
    } catch (LastErrorException e) {
      if (e.getErrorCode() == EAGAIN) {
        return "";
      }
      throw e;
    }
  }

  @Override
  public void close() {
    var unused = close(socket);
  }

  private static native int socket(int family, int type, int protocol) throws LastErrorException;

  private static native int bind(int socket, byte[] to, int length) throws LastErrorException;

  private static native NativeLong recv(int socket, byte[] room, NativeLong length, int flags)
      throws LastErrorException;

  private static native int close(int socket) throws LastErrorException;
}
