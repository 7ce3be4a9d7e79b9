package trayward.host.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * How late scans come while page, log and eight listeners are busy: starts {@code run} as a process
 * of its own with the simulated tray, works at it for some minutes over loopback, and prints what
 * {@code /healthz} says of every scan since the start. One thread for each listener and worker.
 */
public final class ScanJitter {

  /** Eight open pages are more than one darkroom has. */
  private static final int LISTENERS = 8;

  /** What p99.9 is to stay under, ms. */
  private static final double GOAL_MS = 5;

  /** Marks after which the start of the program is behind it: two minutes. */
  private static final long SETTLED = 60;

  /** Minutes where none are given. */
  private static final double MINUTES = 10;

  /** What an open page and its reader of old prints ask for. */
  private static final List<String> PAGES =
      List.of(
          "/",
          "/api/status",
          "/api/prints",
          "/api/sessions",
          "/api/prints/1",
          "/api/prints/1/trace.csv",
          "/api/alarms",
          "/api/upkeep",
          "/api/probes");

  private final HttpClient http = HttpClient.newHttpClient();
  private final ObjectMapper json = new ObjectMapper();
  private final AtomicLong answers = new AtomicLong();
  private final AtomicLong heard = new AtomicLong();
  private final AtomicLong marks = new AtomicLong();
  private final URI page;
  private volatile boolean over;

  private ScanJitter(URI page) {
    this.page = page;
  }

  /** Works for the minutes given, or ten; exit 1 where the goal is missed. */
  public static void main(String[] words) throws Exception {
    double minutes = words.length > 0 ? Double.parseDouble(words[0]) : MINUTES;
    Path folder = Files.createTempDirectory("trayward-jitter");
    Process program = started(folder);
    try (BufferedReader said = program.inputReader(StandardCharsets.UTF_8)) {
      boolean met = new ScanJitter(pageOf(said)).measured(Math.round(minutes * 60));
      program.toHandle().destroy(); // as Ctrl-C does: heat off, log closed
      program.waitFor(10, TimeUnit.SECONDS);
      System.out.println("its log is in " + folder);
      System.exit(met ? 0 : 1);
    } finally {
      program.destroyForcibly();
    }
  }

  private static Process started(Path folder) throws IOException {
    Path config = folder.resolve("jitter.toml");
    Files.writeString(
        config,
        "[tray]\nstart_c = 39\n[server]\nport = 0\n[log]\nfolder = \""
            + folder.resolve("data")
            + "\"\n");
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            "trayward.host.app.Main",
            "run",
            "--config",
            config.toString())
        .redirectErrorStream(true)
        .start();
  }

  private static URI pageOf(BufferedReader said) throws IOException {
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      int at = line.indexOf("http://");
      if (at >= 0) {
        return URI.create(line.substring(at).split(" ", -1)[0]);
      }
    }
    throw new IOException("the program ended before it was there");
  }

  private boolean measured(long seconds) throws Exception {
    ExecutorService pool = Executors.newCachedThreadPool(ScanJitter::daemon);
    post("/api/commands/start", "");
    for (int i = 0; i < LISTENERS; i++) {
      pool.execute(this::listen);
    }
    pool.execute(this::turnPages);
    long untilNanos = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    String[] kinds = {"in", "emergence", "pull"};
    while (System.nanoTime() < untilNanos) {
      if (marks.get() == SETTLED) {
        System.out.println("so far, with the start of the program in it: " + words(lateness()));
      }
      TimeUnit.SECONDS.sleep(2); // a print every six seconds, for a log that is never at rest
      post("/api/marks", "{\"kind\": \"" + kinds[(int) (marks.getAndIncrement() % 3)] + "\"}");
    }
    JsonNode late = lateness();
    System.out.printf("%s; goal p99.9 under %.0f ms%n", words(late), GOAL_MS);
    System.out.printf(
        "meanwhile %d listeners heard %d statuses, %d pages were asked for, %d marks made%n",
        LISTENERS, heard.get(), answers.get(), marks.get());
    System.out.println("state at the end: " + json.readTree(get("/api/status")).path("state"));
    over = true;
    return late.path("p999_ms").asDouble(Double.MAX_VALUE) < GOAL_MS;
  }

  private JsonNode lateness() throws Exception {
    return json.readTree(get("/healthz")).path("scan_lateness");
  }

  private static String words(JsonNode late) {
    return String.format(
        Locale.ROOT,
        "%d scans late by %.2f ms (median), %.2f ms (p99.9), %.2f ms (most)",
        late.path("scans").asLong(),
        late.path("p50_ms").asDouble(),
        late.path("p999_ms").asDouble(),
        late.path("max_ms").asDouble());
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work);
    thread.setDaemon(true);
    return thread;
  }

  private void listen() {
    HttpRequest request = HttpRequest.newBuilder(page.resolve("/api/stream")).build();
    try (var lines = http.send(request, HttpResponse.BodyHandlers.ofLines()).body()) {
      for (Iterator<String> each = lines.iterator(); each.hasNext(); ) {
        if (each.next().startsWith("data:")) {
          heard.incrementAndGet();
        }
      }
    } catch (Exception e) {
      complain("a listener ended: " + e);
    }
  }

  /** Ten answers a second, one after the other. */
  private void turnPages() {
    try {
      for (int k = 0; ; k++) {
        get(PAGES.get(k % PAGES.size()));
        answers.incrementAndGet();
        TimeUnit.MILLISECONDS.sleep(100);
      }
    } catch (Exception e) {
      complain("nobody turns pages any more: " + e);
    }
  }

  private void complain(String what) {
    if (!over) {
      System.err.println(what);
    }
  }

  private String get(String path) throws Exception {
    return http.send(
            HttpRequest.newBuilder(page.resolve(path)).build(),
            HttpResponse.BodyHandlers.ofString())
        .body();
  }

  private void post(String path, String body) throws Exception {
    var unused =
        http.send(
            HttpRequest.newBuilder(page.resolve(path))
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build(),
            HttpResponse.BodyHandlers.ofString());
  }
}
