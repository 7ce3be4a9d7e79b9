package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.function.LongSupplier;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;
import trayward.host.web.guard.Door;

/** A page on loopback over a fake controller and a real log, for tests. One thread. */
final class LocalPage implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();

  final FakeTray tray = new FakeTray();
  final TrayLog log;
  final FakeLogbook logbook;
  private final PageServer server;
  private final HttpClient http = HttpClient.newHttpClient();

  LocalPage(Path folder) throws Exception {
    this(folder, Door.local(), () -> System.nanoTime() / 1_000_000);
  }

  /** Behind another door, by a clock of the test's own, ms. */
  LocalPage(Path folder, Door door, LongSupplier nowMs) throws Exception {
    log = LogFile.open(folder);
    logbook = new FakeLogbook(log);
    server = PageServer.start(door, tray, log, logbook, nowMs);
  }

  int port() {
    return server.port();
  }

  HttpResponse<byte[]> send(String method, String path, String type, byte[] body) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + path))
            .method(method, HttpRequest.BodyPublishers.ofByteArray(body));
    if (!type.isEmpty()) {
      request.header("Content-Type", type);
    }
    return http.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
  }

  JsonNode ok(int status, String method, String path, String body) throws Exception {
    HttpResponse<byte[]> answer =
        send(method, path, "application/json", body.getBytes(StandardCharsets.UTF_8));
    JsonNode node = JSON.readTree(answer.body());
    assertEquals(status, answer.statusCode(), node.toString());
    return node;
  }

  /** An RFC 9457 problem. */
  JsonNode problem(int status, String method, String path, String body) throws Exception {
    JsonNode node = ok(status, method, path, body);
    assertEquals(status, node.path("status").asInt());
    assertTrue(node.hasNonNull("title") && node.hasNonNull("detail"), node.toString());
    return node;
  }

  /** A problem of a field. */
  String wrongField(String method, String path, String body) throws Exception {
    JsonNode node = problem(400, method, path, body);
    assertTrue(!node.path("accepted").asText().isEmpty() && node.has("found"), node.toString());
    return node.path("field").asText();
  }

  /** Marks at a moment of the session. */
  JsonNode mark(String kind, double atS) throws Exception {
    logbook.nowS = atS;
    return ok(201, "POST", "/api/marks", "{\"kind\":\"" + kind + "\"}");
  }

  @Override
  public void close() {
    server.close();
    log.close();
  }
}
