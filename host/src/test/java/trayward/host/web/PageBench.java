package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;

/** The JSON interface on loopback, over a fake controller and a real log, for tests. */
final class PageBench implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();

  final FakeTray tray = new FakeTray();
  final TrayLog log;
  final FakeLogbook logbook;
  private final HttpClient http = HttpClient.newHttpClient();
  private final PageServer server;

  PageBench(Path folder) throws Exception {
    log = LogFile.open(folder);
    logbook = new FakeLogbook(log);
    server = PageServer.start("127.0.0.1", 0, tray, log, logbook);
  }

  private HttpResponse<String> send(String method, String path, String body) throws Exception {
    return http.send(
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + path))
            .method(method, HttpRequest.BodyPublishers.ofString(body.replace('\'', '"')))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  /** Sends a body in which ' stands for ", and expects this status. */
  JsonNode ok(int status, String method, String path, String body) throws Exception {
    HttpResponse<String> response = send(method, path, body);
    assertEquals(status, response.statusCode(), response.body());
    return JSON.readTree(response.body());
  }

  /** The same, and expects a problem after RFC 9457. */
  JsonNode problem(int status, String method, String path, String body) throws Exception {
    JsonNode node = ok(status, method, path, body);
    assertEquals(status, node.path("status").asInt());
    assertTrue(node.hasNonNull("title") && node.hasNonNull("detail"), node.toString());
    return node;
  }

  @Override
  public void close() {
    server.close();
    log.close();
  }
}
