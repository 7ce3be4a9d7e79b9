package trayward.host.web;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** A client that may be as rude as it likes: bytes to a socket, and what comes back. One thread. */
final class RawHttp implements AutoCloseable {

  private static final int PATIENCE_MS = 60_000;

  private final Socket socket;
  private final InputStream in;

  RawHttp(int port) throws IOException {
    socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setSoTimeout(PATIENCE_MS);
    in = new BufferedInputStream(socket.getInputStream());
  }

  RawHttp send(String text) throws IOException {
    return send(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  RawHttp send(byte[] bytes) throws IOException {
    socket.getOutputStream().write(bytes);
    socket.getOutputStream().flush();
    return this;
  }

  /** What one request is answered; its body is read where a length is said. */
  Answer answer() throws IOException {
    String head = head();
    Answer bare = new Answer(head, "");
    String length = bare.header("Content-Length");
    int bytes = length.isEmpty() ? 0 : Integer.parseInt(length);
    return new Answer(head, new String(in.readNBytes(bytes), StandardCharsets.UTF_8));
  }

  /** Everything until the line is closed. */
  String rest() throws IOException {
    return new String(in.readAllBytes(), StandardCharsets.UTF_8);
  }

  private String head() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    while (!bytes.toString(StandardCharsets.ISO_8859_1).endsWith("\r\n\r\n")) {
      int next = in.read();
      if (next < 0) {
        break;
      }
      bytes.write(next);
    }
    return bytes.toString(StandardCharsets.ISO_8859_1);
  }

  /** One request with these header lines on a line of its own. */
  static Answer once(int port, String request, String body, String... headers) throws IOException {
    try (RawHttp raw = new RawHttp(port)) {
      return raw.send(text(request, body, headers)).answer();
    }
  }

  /** A request as it is sent; {@code Host} is loopback's unless a header says otherwise. */
  static String text(String request, String body, String... headers) {
    StringBuilder text = new StringBuilder(request + " HTTP/1.1\r\n");
    boolean hosted = false;
    for (String header : headers) {
      hosted |= header.startsWith("Host:");
      text.append(header).append("\r\n");
    }
    if (!hosted) {
      text.append("Host: 127.0.0.1\r\n");
    }
    int bytes = body.getBytes(StandardCharsets.UTF_8).length;
    return text + (bytes > 0 ? "Content-Length: " + bytes + "\r\n" : "") + "\r\n" + body;
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }

  /**
   * What came back.
   *
   * @param head status line and headers; empty where the line was closed without a word
   * @param body what followed
   */
  record Answer(String head, String body) {

    /** The status; 0 where there was none. */
    int status() {
      String[] words = head.split(" ", 3);
      return words.length > 1 ? Integer.parseInt(words[1]) : 0;
    }

    String header(String name) {
      String wanted = name.toLowerCase(Locale.ROOT) + ":";
      return head.lines()
          .filter(line -> line.toLowerCase(Locale.ROOT).startsWith(wanted))
          .map(line -> line.substring(wanted.length()).strip())
          .findFirst()
          .orElse("");
    }
  }
}
