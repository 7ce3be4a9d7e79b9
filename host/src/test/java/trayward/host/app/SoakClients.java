package trayward.host.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.LongAdder;
import javax.imageio.ImageIO;

/**
 * Everybody who may be at a running program, all at once: listeners of the stream that stay and one
 * that comes and goes, one who reads every document, a printer with sheets, marks, pours and
 * pictures, and one who exports and copies the log beside it. Threads of its own.
 */
final class SoakClients implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int LISTENERS = 6;

  /** A print this often, s, as a fast printer with small sheets. */
  private static final int PRINT_S = 120;

  /** Documents that are asked for in turn, {@code ?} for the newest print. */
  private static final List<String> DOCUMENTS =
      List.of(
          "/",
          "/page.js",
          "/white.html",
          "/api/status",
          "/healthz",
          "/api/prints",
          "/api/prints/?",
          "/api/prints/?/trace.csv",
          "/api/prints?q=soak",
          "/api/sessions",
          "/api/baths",
          "/api/in-tray",
          "/api/working-baths",
          "/api/shelf",
          "/api/alarms",
          "/api/upkeep",
          "/api/probes",
          "/api/forecast",
          "/api/forecast?celsius=37",
          "/api/prints/?/repeat",
          "/api/advice?verdict=too-hard",
          "/api/plan",
          "/api/plan/air?volume=15&flow=150&mixing=3",
          "/api/print-fields",
          "/api/print-steps",
          "/api/lights",
          "/api/openapi.json");

  private final PackagedHalves halves;
  private final Path folder;
  private final URI page;
  private final HttpClient http = HttpClient.newHttpClient();
  private final ScheduledExecutorService rounds = Executors.newScheduledThreadPool(4);
  private final Map<String, LongAdder> answers = new ConcurrentSkipListMap<>();
  private final Map<String, String> wrong = new ConcurrentHashMap<>();
  private final List<Thread> listeners = new ArrayList<>();
  private final AtomicLong told = new AtomicLong();
  private final AtomicLong newest = new AtomicLong();
  private int nextDocument;
  private int copies;
  private volatile boolean over;

  SoakClients(PackagedHalves halves, Path folder) {
    this.halves = halves;
    this.folder = folder;
    this.page = halves.host().page();
  }

  void start() {
    for (int i = 0; i < LISTENERS; i++) {
      Thread listener = new Thread(this::listen, "soak listener " + i);
      listener.setDaemon(true);
      listener.start();
      listeners.add(listener);
    }
    every("comes and goes", 5, 5_000, this::comeAndGo);
    every("reads", 1, 150, this::readNext);
    every("prints", 5, PRINT_S * 1000L, this::in);
    every("sees blacks", 30, PRINT_S * 1000L, () -> mark("emergence"));
    every("pulls", 55, PRINT_S * 1000L, this::pull);
    every("pours", 80, PRINT_S * 1000L * 2, this::pour);
    every("takes a picture", 90, PRINT_S * 1000L * 5, this::picture);
    every("is there", 2, 600_000, () -> expect(200, "POST", "/api/commands/presence", "{}"));
    every("sets", 700, 900_000, () -> set(39));
    every("sets back", 1100, 900_000, () -> set(38));
    every("copies", 100, 600_000, this::copy);
  }

  private interface Round {
    void go() throws Exception;
  }

  private void every(String who, long afterS, long periodMs, Round round) {
    var unused =
        rounds.scheduleAtFixedRate(
            () -> {
              try {
                round.go();
              } catch (Exception e) {
                note(who, e.toString());
              }
            },
            afterS * 1000,
            periodMs,
            TimeUnit.MILLISECONDS);
  }

  /** The first of each kind is kept, in words; all are counted. */
  private void note(String who, String what) {
    if (!over) {
      answers.computeIfAbsent("wrong: " + who, k -> new LongAdder()).increment();
      wrong.putIfAbsent(who, what);
    }
  }

  private void listen() {
    while (!over) {
      HttpRequest request = HttpRequest.newBuilder(page.resolve("/api/stream")).build();
      try (var lines = http.send(request, HttpResponse.BodyHandlers.ofLines()).body()) {
        lines.forEach(line -> told.addAndGet(line.startsWith("data:") ? 1 : 0));
      } catch (Exception e) {
        note("listens", e.toString());
      }
      note("listens", "the stream ended");
    }
  }

  private void comeAndGo() throws Exception {
    HttpRequest request = HttpRequest.newBuilder(page.resolve("/api/stream")).build();
    HttpClient another = HttpClient.newHttpClient(); // a line of its own, which is dropped
    try (InputStream in = another.send(request, HttpResponse.BodyHandlers.ofInputStream()).body()) {
      count("came and went", in.read() >= 0 ? 200 : 0);
    }
  }

  private HttpResponse<String> send(String method, String path, String body) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(page.resolve(path))
            .method(method, HttpRequest.BodyPublishers.ofString(body))
            .build();
    return http.send(request, HttpResponse.BodyHandlers.ofString());
  }

  private void count(String what, int code) {
    answers.computeIfAbsent(what + " " + code, k -> new LongAdder()).increment();
  }

  private String expect(int wanted, String method, String path, String body) throws Exception {
    HttpResponse<String> answer = send(method, path, body);
    count(method, answer.statusCode());
    if (answer.statusCode() != wanted) {
      note(method + " " + path, answer.statusCode() + " " + answer.body());
    }
    return answer.body();
  }

  private void readNext() throws Exception {
    String path = DOCUMENTS.get(nextDocument++ % DOCUMENTS.size());
    if (!path.contains("/?") || newest.get() > 0) {
      // A register line does not carry the record of alarms, and the page says so.
      int wanted = path.equals("/api/alarms") ? 503 : 200;
      expect(wanted, "GET", path.replace("/?", "/" + newest.get()), "");
    }
  }

  private void mark(String kind) throws Exception {
    JsonNode print =
        JSON.readTree(expect(201, "POST", "/api/marks", "{\"kind\":\"" + kind + "\"}"));
    newest.set(print.path("id").asLong(newest.get()));
  }

  private void in() throws Exception {
    halves.bench().give(20, 15); // a small sheet, wet and cold: 0.9 K
    mark("in");
  }

  private void pull() throws Exception {
    mark("pull");
    String said =
        String.format(
            Locale.ROOT,
            "{\"title\":\"soak %d\",\"paper\":\"glossy\",\"base_exposure_s\":12.5}",
            newest.get());
    expect(200, "PATCH", "/api/prints/" + newest.get(), said);
  }

  private void pour() throws Exception {
    halves.bench().give(0.01 * 4180, 20); // a dash of 10 ml
    expect(201, "POST", "/api/baths", "{\"name\":\"soak\",\"litres\":0.12}");
  }

  private void set(double celsius) throws Exception {
    expect(200, "PUT", "/api/set-temperature", "{\"celsius\":" + celsius + "}");
  }

  private void picture() throws Exception {
    BufferedImage image = new BufferedImage(1600, 1200, BufferedImage.TYPE_INT_RGB);
    for (int x = 0; x < 1600; x++) {
      for (int y = 0; y < 1200; y++) {
        image.setRGB(x, y, (x * 7 ^ y * 13) & 0xff);
      }
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "jpg", bytes);
    HttpRequest request =
        HttpRequest.newBuilder(page.resolve("/api/prints/" + newest.get() + "/pictures"))
            .header("Content-Type", "image/jpeg")
            .POST(HttpRequest.BodyPublishers.ofByteArray(bytes.toByteArray()))
            .build();
    int code = http.send(request, HttpResponse.BodyHandlers.ofString()).statusCode();
    count("picture", code);
  }

  private void copy() throws Exception {
    String log = halves.bench().data().toString();
    copies++;
    Path out = folder.resolve("copies");
    for (String[] words :
        new String[][] {
          {"export", "--log", log, "--out", out.resolve("export-" + copies).toString()},
          {"backup", "--log", log, "--out", out.resolve("backup-" + copies).toString()},
          {"check-log", "--log", out.resolve("backup-" + copies).toString()}
        }) {
      String failed = halves.command(words);
      count(words[0], failed.isEmpty() ? 0 : 1);
      if (!failed.isEmpty()) {
        note(words[0], failed);
      }
    }
  }

  /** Statuses told to listeners so far. */
  long told() {
    return told.get();
  }

  /** The newest print. */
  long prints() {
    return newest.get();
  }

  /** What was answered, and how often. */
  Map<String, LongAdder> answers() {
    return answers;
  }

  /** What went wrong, the first of each kind. */
  Map<String, String> wrong() {
    return wrong;
  }

  /** Nobody asks any more. */
  void end() {
    over = true;
    rounds.shutdownNow();
    for (Thread listener : listeners) {
      listener.interrupt();
    }
  }

  @Override
  public void close() {
    end();
  }
}
