package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.LongAdder;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.HdrHistogram.ConcurrentHistogram;
import org.HdrHistogram.Histogram;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;
import trayward.host.web.guard.PasswordFile;
import trayward.host.web.guard.PasswordHash;

/**
 * The real program holds its bath while a crowd attacks its page: heat goes on, no scan trips, and
 * a stop passes. What it measured stands in its output; it judges no times, which are the
 * computer's.
 */
@Tag("full")
class UnderAttackTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** How long they hammer, s. */
  private static final long SECONDS = Long.getLong("trayward.attack.seconds", 60);

  private static final Set<String> HEATED = Set.of("HEATING", "HOLDING");
  private static final int IDLE_STREAMS = 1000;
  private static final int SLOW = 200;
  private static final int STOPS = 20;
  private static final long PERIOD_NANOS = 100_000_000L;

  @TempDir Path folder;

  private final Map<String, LongAdder> answers = new ConcurrentHashMap<>();
  private final Queue<Socket> held = new ConcurrentLinkedQueue<>();
  private final HttpClient http = HttpClient.newHttpClient();
  private volatile boolean over;

  private HttpResponse<String> ask(
      URI page, String method, String path, String body, String... head) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(page.resolve(path))
            .method(method, HttpRequest.BodyPublishers.ofString(body));
    if (head.length > 0) {
      request.headers(head);
    }
    return http.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  private String loggedIn(URI page) throws Exception {
    HttpResponse<String> in = ask(page, "POST", "/api/login", "{\"password\":\"correct horse\"}");
    assertEquals(200, in.statusCode(), in.body());
    return in.headers().firstValue("Set-Cookie").orElseThrow().split(";", -1)[0];
  }

  private JsonNode json(URI page, String path, String cookie) throws Exception {
    return JSON.readTree(ask(page, "GET", path, "", "Cookie", cookie).body());
  }

  private void awaitHeld(URI page, String cookie) throws Exception {
    while (!HEATED.contains(json(page, "/api/status", cookie).path("state").asText())) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
    }
  }

  /** One attacker: the same again and again, and what it was answered. */
  private Runnable again(
      String name, URI page, String method, String path, String body, String... head) {
    return () -> {
      while (!over) {
        String told;
        try {
          told = name + " " + ask(page, method, path, body, head).statusCode();
        } catch (Exception e) {
          told = name + " without an answer";
        }
        answers.computeIfAbsent(told, k -> new LongAdder()).increment();
      }
    };
  }

  private void hold(URI page, String text) throws IOException {
    Socket socket = new Socket(InetAddress.getLoopbackAddress(), page.getPort());
    held.add(socket);
    socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private void idle(URI page, String cookie) throws IOException {
    String in = " HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: " + cookie + "\r\n";
    for (int i = 0; i < IDLE_STREAMS; i++) {
      hold(page, "GET /api/stream" + in + "\r\n"); // and never reads
    }
    for (int i = 0; i < SLOW; i++) {
      hold(
          page,
          i % 2 == 0
              ? "GET /api/status" + in + "X-Slow: "
              : "POST /api/marks" + in + "Content-Length: 60000\r\n\r\n{");
    }
  }

  private void attack(ExecutorService crowd, URI page, String cookie) {
    String[] in = {"Cookie", cookie};
    String[] far = {"Cookie", cookie, "Origin", "http://evil.example"};
    String[] form = {"Cookie", cookie, "Origin", "null", "Content-Type", "text/plain"};
    crowd.execute(again("status", page, "GET", "/api/status", "", in));
    crowd.execute(again("prints", page, "GET", "/api/prints?q=a", "", in));
    crowd.execute(again("forecast", page, "GET", "/api/forecast?celsius=40", "", in));
    crowd.execute(again("plan", page, "GET", "/api/plan/air", "", in));
    crowd.execute(again("malformed", page, "POST", "/api/marks", "[".repeat(30_000), in));
    crowd.execute(again("marks", page, "POST", "/api/marks", "{\"kind\":\"in\"}", in));
    crowd.execute(again("oversized", page, "POST", "/api/marks", "x".repeat(200_000), in));
    crowd.execute(again("cross-site", page, "POST", "/api/commands/start", "", far));
    crowd.execute(again("form", page, "POST", "/api/commands/reset", "x", form));
    crowd.execute(again("no login", page, "GET", "/api/prints", ""));
    crowd.execute(again("traversal", page, "GET", "/..%2f..%2fetc/passwd", "", in));
    crowd.execute(again("login", page, "POST", "/api/login", "{\"password\":\"wrong one\"}"));
  }

  @Test
  @Timeout(600)
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  @Verifies(value = "SR-17", side = Side.ALLOWS)
  void theBathIsHeldAndAStopPassesWhileACrowdAttacksThePage() throws Exception {
    Path data = folder.resolve("data");
    new PasswordFile(data)
        .write(PasswordHash.of("correct horse".toCharArray(), new SecureRandom()));
    Path config =
        Files.writeString(
            folder.resolve("attack.toml"),
            "[tray]\nstart_c = 39.9\n[limits]\npurge_s = 10\ncontact_test_s = 15\n"
                + "[server]\nport = 0\n[log]\nfolder = \""
                + data
                + "\"\n");
    ExecutorService crowd = Executors.newCachedThreadPool();
    try (RunningTrayward program = RunningTrayward.start(config)) {
      URI page = program.page();
      String cookie = loggedIn(page);
      assertEquals(
          200, ask(page, "POST", "/api/commands/start", "", "Cookie", cookie).statusCode());
      awaitHeld(page, cookie);
      Waker waker = new Waker();
      crowd.execute(() -> waker.run(() -> over));
      JsonNode before = json(page, "/healthz", cookie).path("scan_lateness");
      idle(page, cookie);
      attack(crowd, page, cookie);
      long untilNanos = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
      while (System.nanoTime() < untilNanos) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(100));
      }
      double[] stopMs = stops(page); // without a login, in the middle of it
      over = true;
      crowd.shutdown();
      assertTrue(crowd.awaitTermination(2, TimeUnit.MINUTES));
      JsonNode after = calm(page, cookie);
      System.out.println("before the attack " + before + "\nafter it          " + after);
      System.out.println("beside it, a thread that only wakes: " + waker.lateness());
      System.out.println("a stop took " + stopMs[0] + " ms (median), " + stopMs[1] + " ms (most)");
      new TreeMap<>(answers).forEach((told, times) -> System.out.println(told + ": " + times));
      JsonNode status = json(page, "/api/status", cookie);
      assertEquals("AFTER_RUN", status.path("state").asText(), status.toString());
      assertTrue(status.path("first_out").isNull(), status.toString());
      refused("cross-site 403", "form 403", "no login 401", "malformed 400", "oversized 413");
    } finally {
      over = true;
      crowd.shutdownNow();
      for (Socket each : held) {
        each.close();
      }
    }
  }

  /**
   * A thread that does nothing but wake ten times a second: what this computer itself lets any
   * thread wait while the crowd is on it, to hold a scan's lateness against.
   */
  private static final class Waker {
    private final Histogram lateMicros = new ConcurrentHistogram(3);

    void run(BooleanSupplier over) {
      long dueNanos = System.nanoTime();
      while (!over.getAsBoolean()) {
        dueNanos += PERIOD_NANOS;
        long waitNanos = dueNanos - System.nanoTime();
        while (waitNanos > 0) {
          LockSupport.parkNanos(waitNanos);
          waitNanos = dueNanos - System.nanoTime();
        }
        lateMicros.recordValue(-waitNanos / 1000);
      }
    }

    String lateness() {
      return String.format(
          Locale.ROOT,
          "p50 %.2f ms, p99.9 %.2f ms, most %.2f ms",
          lateMicros.getValueAtPercentile(50) / 1e3,
          lateMicros.getValueAtPercentile(99.9) / 1e3,
          lateMicros.getMaxValue() / 1e3);
    }
  }

  /** Median and greatest time of some stops, ms; each must pass. */
  private double[] stops(URI page) throws Exception {
    double[] ms = new double[STOPS];
    for (int i = 0; i < STOPS; i++) {
      long from = System.nanoTime();
      assertEquals(200, ask(page, "POST", "/api/commands/stop", "").statusCode());
      ms[i] = (System.nanoTime() - from) / 1e6;
    }
    Arrays.sort(ms);
    return new double[] {ms[STOPS / 2], ms[STOPS - 1]};
  }

  /** How late scans came, once the crowd's last requests are through. */
  private JsonNode calm(URI page, String cookie) throws Exception {
    while (true) {
      JsonNode late = json(page, "/healthz", cookie).path("scan_lateness");
      if (late.has("p999_ms")) {
        return late;
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
    }
  }

  private void refused(String... told) {
    for (String each : told) {
      assertTrue(answers.containsKey(each), each + " is not among " + answers.keySet());
    }
  }
}
