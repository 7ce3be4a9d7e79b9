package trayward.host.app;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/**
 * The page's own files over a status that a test writes: states that the program reaches only after
 * many prints. Threads of its own serve; {@link #say} and {@link #answer} from any.
 */
final class StagedPage implements AutoCloseable {

  /** As the program sends it: what would be blocked there is blocked here. */
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self';"
          + " img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  private static final Map<String, String> TYPES =
      Map.of("html", "text/html", "css", "text/css", "js", "text/javascript");

  private static final long PERIOD_MS = 250;

  private final HttpServer server;
  private final ExecutorService threads = Executors.newCachedThreadPool();
  private final CountDownLatch closed = new CountDownLatch(1);
  private final Map<String, String> answers = new ConcurrentHashMap<>();
  private final List<String> asked = new CopyOnWriteArrayList<>();
  private volatile String status = "{}";
  private volatile boolean silent;

  StagedPage() throws IOException {
    server = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
    server.setExecutor(threads);
    server.createContext("/", this::serve);
    server.start();
  }

  URI page() {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/");
  }

  /** What the stream says from now on. */
  void say(String json) {
    status = json;
    silent = false;
  }

  /** The stream goes on without a word. */
  void fallSilent() {
    silent = true;
  }

  /** What {@code GET /api/in-tray} and its kin answer; other requests are answered by {}. */
  void answer(String request, String body) {
    answers.put(request, body);
  }

  /** Every request, as {@code POST /api/marks/undo body}. */
  List<String> asked() {
    return asked;
  }

  private void serve(HttpExchange exchange) throws IOException {
    try (exchange) {
      String path = exchange.getRequestURI().getPath();
      String request = exchange.getRequestMethod() + " " + path;
      String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
      asked.add(body.isEmpty() ? request : request + " " + body);
      if (path.equals("/api/stream")) {
        stream(exchange);
      } else if (path.startsWith("/api/") || path.equals("/white.html")) {
        String type = path.endsWith(".csv") ? "text/csv" : "application/json";
        byte[] said = answers.getOrDefault(request, "{}").getBytes(StandardCharsets.UTF_8);
        send(exchange, path.startsWith("/api/") ? type : "text/html", said);
      } else {
        file(exchange, path.equals("/") ? "/index.html" : path);
      }
    }
  }

  private static void send(HttpExchange exchange, String type, byte[] body) throws IOException {
    exchange.getResponseHeaders().add("Content-Type", type + "; charset=utf-8");
    exchange.getResponseHeaders().add("Content-Security-Policy", POLICY);
    exchange.sendResponseHeaders(200, body.length == 0 ? -1 : body.length);
    exchange.getResponseBody().write(body);
  }

  private static void file(HttpExchange exchange, String path) throws IOException {
    try (InputStream in = StagedPage.class.getResourceAsStream("/trayward/page" + path)) {
      if (in == null) {
        exchange.sendResponseHeaders(404, -1);
        return;
      }
      String type = TYPES.getOrDefault(path.substring(path.lastIndexOf('.') + 1), "text/plain");
      send(exchange, type, in.readAllBytes());
    }
  }

  private void stream(HttpExchange exchange) throws IOException {
    exchange.getResponseHeaders().add("Content-Type", "text/event-stream");
    exchange.sendResponseHeaders(200, 0);
    OutputStream out = exchange.getResponseBody();
    try {
      do {
        if (!silent) {
          String event = "event: status\ndata: " + status.replaceAll("\\s+", " ") + "\n\n";
          out.write(event.getBytes(StandardCharsets.UTF_8));
          out.flush();
        }
      } while (!closed.await(PERIOD_MS, TimeUnit.MILLISECONDS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    closed.countDown();
    server.stop(0);
    threads.shutdownNow();
  }
}
