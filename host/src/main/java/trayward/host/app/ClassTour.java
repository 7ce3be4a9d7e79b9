package trayward.host.app;

import java.io.IOException;
import java.io.InputStream;
import java.net.HttpURLConnection;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Runs a half of the program for some seconds on a simulated tray, so that its classes are loaded
 * and the Java machine can list them ({@code -XX:DumpLoadedClassList}) for an archive from which
 * later starts take them. Not a command: only the package's {@code make-archives} starts it. Main
 * thread, and one for each half.
 */
public final class ClassTour {

  /** What the page asks for, and then a print from in to pull. */
  private static final List<String> LOOKS =
      List.of("/", "/page.js", "/api/status", "/api/prints", "/api/forecast", "/api/openapi.json");

  /** A slow board needs half a minute to its page; past two nothing will come. */
  private static final long PATIENCE_S = 120;

  /** Some scans, and some ticks of the recorder. */
  private static final long STAY_S = 3;

  private final Path folder;
  private final int linkPort;
  private final int pagePort;

  private ClassTour(Path folder) throws IOException {
    this.folder = Files.createDirectories(folder);
    try (ServerSocket link = anyPort();
        ServerSocket page = anyPort()) { // both at once, or they might be one
      this.linkPort = link.getLocalPort();
      this.pagePort = page.getLocalPort();
    }
  }

  /**
   * Goes round and exits.
   *
   * @param args {@code controller} or {@code host}, and a folder that may be thrown away
   */
  public static void main(String[] args) throws IOException {
    ClassTour tour = new ClassTour(Path.of(args[1]));
    tour.half("controller");
    if (args[0].equals("host")) {
      tour.half("host");
      tour.look();
    }
    LockSupport.parkNanos(TimeUnit.SECONDS.toNanos(STAY_S));
    System.exit(0);
  }

  private static ServerSocket anyPort() throws IOException {
    return new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
  }

  private void half(String which) throws IOException {
    Path config =
        Files.writeString(
            folder.resolve(which + ".toml"),
            """
            [link]
            tcp_port = %d
            [server]
            port = %d
            [log]
            folder = "%s"
            """
                .formatted(linkPort, pagePort, folder.resolve(which + "-data")));
    String[] words = {which, "--config", config.toString()};
    Thread thread = new Thread(() -> Main.run(words, System.out, System.err), which);
    thread.setDaemon(true);
    thread.start();
  }

  private void look() throws IOException {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
    while (!answers("GET", "/healthz", "") && System.nanoTime() < until) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50));
    }
    for (String path : LOOKS) {
      answers("GET", path, "");
    }
    for (String kind : List.of("in", "emergence", "pull")) {
      answers("POST", "/api/marks", "{\"kind\": \"" + kind + "\"}");
    }
    answers("GET", "/api/prints/1", "");
  }

  /** Whether it was answered well; one that was not takes nothing from the tour. */
  private boolean answers(String method, String path, String body) throws IOException {
    HttpURLConnection asked =
        (HttpURLConnection)
            URI.create("http://127.0.0.1:" + pagePort + path).toURL().openConnection();
    try {
      asked.setRequestMethod(method);
      if (!body.isEmpty()) {
        asked.setDoOutput(true);
        asked.getOutputStream().write(body.getBytes(StandardCharsets.UTF_8));
      }
      try (InputStream answer = asked.getInputStream()) {
        var unused = answer.readAllBytes();
      }
      return true;
    } catch (IOException e) {
      return false;
    } finally {
      asked.disconnect();
    }
  }
}
