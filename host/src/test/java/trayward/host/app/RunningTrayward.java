package trayward.host.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** The program as a process of its own, started the way a person does, and spoken to over HTTP. */
final class RunningTrayward implements AutoCloseable {

  /** Options for a program whose threads a test wants to hold and trip, see {@link Tamed}. */
  static final String TAMED =
      "-agentlib:jdwp=transport=dt_socket,server=y,suspend=n,address=127.0.0.1:0";

  private static final String TAME_AT = "Listening for transport dt_socket at address: ";
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Process process;
  private final BufferedReader output;
  private final URI base;
  private final int tamePort;
  private final HttpClient http = HttpClient.newHttpClient();

  private RunningTrayward(Process process, BufferedReader output, URI base, int tamePort) {
    this.process = process;
    this.output = output;
    this.base = base;
    this.tamePort = tamePort;
  }

  /**
   * Starts {@code run --config} and waits for the line that says where the page is.
   *
   * @param machine options of the Java machine
   */
  static RunningTrayward start(Path config, String... machine) throws IOException {
    return listen(process(List.of(machine), "run", "--config", config.toString()));
  }

  /** The same of {@code host --config}. */
  static RunningTrayward host(Path config) throws IOException {
    return listen(process("host", "--config", config.toString()));
  }

  /** Waits for the line of a program, started in some other way, that says where the page is. */
  static RunningTrayward listen(Process process) throws IOException {
    BufferedReader output =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    List<String> said = new ArrayList<>();
    int tamePort = 0;
    for (String line = output.readLine(); line != null; line = output.readLine()) {
      said.add(line);
      int at = line.indexOf("http");
      if (line.startsWith(TAME_AT)) {
        tamePort = Integer.parseInt(line.substring(TAME_AT.length()).trim());
      }
      if (line.startsWith("Trayward is at") && at > 0) {
        String address = line.substring(at).split(" ", -1)[0];
        return new RunningTrayward(process, output, URI.create(address), tamePort);
      }
    }
    throw new IOException("the program ended and said: " + said);
  }

  /** The program with these words, its errors joined to its output. */
  static Process process(String... words) throws IOException {
    return process(List.of(), words);
  }

  private static Process process(List<String> machine, String... words) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(machine);
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add("trayward.host.app.Main");
    command.addAll(List.of(words));
    return new ProcessBuilder(command).redirectErrorStream(true).start();
  }

  URI page() {
    return base;
  }

  long pid() {
    return process.pid();
  }

  /** The port of the machine's debugger's interface; 0 where none was asked for. */
  int tamePort() {
    return tamePort;
  }

  /** Sends a signal of the system, such as {@code KILL}. */
  void signal(String name) throws Exception {
    new ProcessBuilder("kill", "-" + name, Long.toString(pid())).start().waitFor();
  }

  /** Waits for its end, at most so long, and gives its exit code; empty where it goes on. */
  OptionalInt exitCode(double seconds) throws InterruptedException {
    return process.waitFor((long) (seconds * 1000), TimeUnit.MILLISECONDS)
        ? OptionalInt.of(process.exitValue())
        : OptionalInt.empty();
  }

  HttpResponse<String> send(String method, String path, String body) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(base.resolve(path))
            .method(method, HttpRequest.BodyPublishers.ofString(body))
            .build();
    return http.send(request, HttpResponse.BodyHandlers.ofString());
  }

  JsonNode json(String method, String path, String body) throws Exception {
    return JSON.readTree(send(method, path, body).body());
  }

  JsonNode status() throws Exception {
    return json("GET", "/api/status", "");
  }

  /** Listens to the stream until a status is as wanted; the test's own time-out bounds it. */
  JsonNode await(Predicate<JsonNode> wanted) throws Exception {
    HttpRequest request = HttpRequest.newBuilder(base.resolve("/api/stream")).build();
    try (var lines = http.send(request, HttpResponse.BodyHandlers.ofLines()).body()) {
      for (Iterator<String> each = lines.iterator(); each.hasNext(); ) {
        String line = each.next();
        if (line.startsWith("data:")) {
          JsonNode status = JSON.readTree(line.substring(5));
          if (wanted.test(status)) {
            return status;
          }
        }
      }
    }
    throw new IOException("the stream ended");
  }

  JsonNode awaitState(String state) throws Exception {
    return await(s -> s.path("state").asText().equals(state));
  }

  /** Ends it as Ctrl-C does and gives what it still said. */
  String endPolitely() throws Exception {
    process.toHandle().destroy(); // unlike Process.destroy, this leaves its output readable
    StringBuilder rest = new StringBuilder();
    for (String line = output.readLine(); line != null; line = output.readLine()) {
      rest.append(line).append('\n');
    }
    process.waitFor(10, TimeUnit.SECONDS);
    return rest.toString();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
