package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.store.PictureScenes;
import trayward.host.store.Pictures;

@Timeout(60)
class PictureApiTest {

  private static final String UP = "/api/prints/1/pictures";

  @TempDir private Path folder;
  private LocalPage page;

  @BeforeEach
  void start() throws Exception {
    page = new LocalPage(folder);
    page.mark("in", 10);
  }

  @AfterEach
  void stop() {
    page.close();
  }

  private JsonNode up(int status, String type, byte[] body) throws Exception {
    HttpResponse<byte[]> answer = page.send("POST", UP, type, body);
    JsonNode node = new ObjectMapper().readTree(answer.body());
    assertEquals(status, answer.statusCode(), node.toString());
    return node;
  }

  private static String header(HttpResponse<byte[]> answer, String name) {
    return answer.headers().firstValue(name).orElse("");
  }

  @Test
  void aPictureFarLargerThanAnyOtherBodyIsTakenShownAndTakenBack() throws Exception {
    byte[] jpeg = PictureScenes.jpeg(3000, 2000);
    assertTrue(jpeg.length > 64 * 1024, "larger than the bound of other requests");
    JsonNode picture = up(201, "image/jpeg", jpeg);
    assertEquals(3000, picture.path("width").asInt());
    HttpResponse<byte[]> original = page.send("GET", "/api/pictures/1", "", new byte[0]);
    assertArrayEquals(jpeg, original.body());
    assertEquals("image/jpeg", header(original, "Content-Type"));
    assertEquals("nosniff", header(original, "X-Content-Type-Options"));
    HttpResponse<byte[]> small = page.send("GET", "/api/pictures/1/small", "", new byte[0]);
    assertEquals("image/jpeg", header(small, "Content-Type"));
    assertEquals("nosniff", header(small, "X-Content-Type-Options"));
    assertTrue(small.body().length < 64 * 1024 && (small.body()[0] & 0xFF) == 0xFF);
    JsonNode listed = page.ok(200, "GET", "/api/prints/1", "").path("pictures");
    assertEquals(picture, listed.path(0));
    JsonNode print = page.ok(200, "DELETE", "/api/pictures/1", "");
    assertEquals(0, print.path("pictures").size());
    assertEquals("picture 1", print.path("history").path(0).path("field").asText());
    page.problem(404, "GET", "/api/pictures/1", "");
    page.problem(404, "GET", "/api/pictures/1/small", "");
    page.problem(404, "DELETE", "/api/pictures/1", "");
  }

  @Test
  void aPngIsShownAsOne() throws Exception {
    up(201, "image/png; x=y", PictureScenes.claiming(64, 64, 64));
    HttpResponse<byte[]> original = page.send("GET", "/api/pictures/1", "", new byte[0]);
    assertEquals("image/png", header(original, "Content-Type"));
  }

  @Test
  void whatIsNoPictureIsRefused() throws Exception {
    byte[] jpeg = PictureScenes.jpeg(400, 300);
    byte[] text = "<html><script>alert(1)</script>".getBytes(StandardCharsets.UTF_8);
    for (byte[] bad :
        new byte[][] {
          text,
          new byte[0],
          Arrays.copyOf(jpeg, jpeg.length / 2),
          PictureScenes.claiming(30_000, 30_000, 1),
          new byte[Pictures.BYTES_MAX + 1]
        }) {
      JsonNode problem = up(400, "image/jpeg", bad);
      assertTrue(problem.path("found").asText().startsWith("no picture"), problem.toString());
    }
    assertEquals("Content-Type", up(400, "text/html", jpeg).path("field").asText());
    assertEquals("Content-Type", up(400, "image/svg+xml", jpeg).path("field").asText());
    assertEquals("Content-Type", up(400, "", jpeg).path("field").asText());
    page.problem(404, "POST", "/api/prints/9/pictures", "");
    assertEquals(0, page.ok(200, "GET", "/api/prints/1", "").path("pictures").size());
  }

  @Test
  void theBoundOfEveryOtherBodyStays() throws Exception {
    byte[] large = ("{\"notes\":\"" + "x".repeat(70_000) + "\"}").getBytes(StandardCharsets.UTF_8);
    assertEquals(413, page.send("PATCH", "/api/prints/1", "application/json", large).statusCode());
  }

  @Test
  void aFileSomebodyRemovedIsMissing() throws Exception {
    String file = up(201, "image/jpeg", PictureScenes.jpeg(64, 64)).path("file").asText();
    Files.delete(folder.resolve("pictures").resolve(file));
    page.problem(404, "GET", "/api/pictures/1", "");
    assertEquals(200, page.send("GET", "/api/pictures/1/small", "", new byte[0]).statusCode());
  }
}
