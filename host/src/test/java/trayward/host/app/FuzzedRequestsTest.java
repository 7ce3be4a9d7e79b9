package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.fuzz.Mutations;
import trayward.host.store.BookModel;
import trayward.host.store.LogCopies;

/**
 * The real program spoken to in spoilt HTTP: it never fails within (no answer of 500 or 503), never
 * hangs, and nothing heats, as nothing among it starts.
 */
@Tag("full")
@Timeout(1200)
class FuzzedRequestsTest {

  private static final int TRIED = 3000 * Integer.getInteger("trayward.fuzz", 1);

  /** How long an answer may take before it counts as a hang, ms: a slow machine, no more. */
  private static final int PATIENCE_MS = 20_000;

  private static final List<String> GOOD =
      List.of(
          "GET /api/status|",
          "GET /|",
          "GET /api/prints?q=pier&paper=matt|",
          "GET /api/prints/1/trace.csv|",
          "GET /api/plan/air?volume=15&flow=150|",
          "GET /api/forecast|",
          "POST /api/marks|{\"kind\": \"in\"}",
          "POST /api/prints/1/marks|{\"kind\": \"pull\"}",
          "PATCH /api/prints/1|{\"title\": \"a\", \"aperture\": 8, \"notes\": null}",
          "PUT /api/set-temperature|{\"celsius\": 40}",
          "POST /api/commands/presence|",
          "POST /api/baths|{\"name\": \"e\", \"litres\": 1, \"note\": \"\"}",
          "POST /api/baths/1/additions|{\"what\": \"water\", \"millilitres\": 50}",
          "POST /api/shelf|{\"kind\": \"paper\", \"name\": \"matt\"}",
          "POST /api/prints/1/steps|{\"kind\": \"fix\", \"seconds\": 60, \"dilution\": \"1+4\"}");

  @TempDir private Path folder;

  private static byte[] request(String good) {
    int bar = good.indexOf('|');
    String body = good.substring(bar + 1);
    String text =
        good.substring(0, bar)
            + " HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\n"
            + "Connection: close\r\nContent-Length: "
            + body.length()
            + "\r\n\r\n"
            + body;
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** Changes only the body, with its length put right, or anything of the request. */
  private static byte[] spoilt(Mutations mutations) {
    String good = mutations.one(GOOD);
    if (mutations.random().nextBoolean()) {
      return mutations.bytes(request(good));
    }
    int bar = good.indexOf('|') + 1;
    return request(
        good.substring(0, bar)
            + mutations.text(good.substring(bar)).replaceAll("[^\\x00-\\x7f]", "?"));
  }

  private static String answer(RunningTrayward program, byte[] request) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), program.page().getPort())) {
      socket.setSoTimeout(PATIENCE_MS);
      socket.getOutputStream().write(request);
      socket.shutdownOutput();
      byte[] head = socket.getInputStream().readNBytes(40);
      return new String(head, StandardCharsets.ISO_8859_1);
    } catch (SocketException e) {
      return "hung up"; // it may, on what is no request
    }
  }

  @Test
  void noSpoiltRequestFailsTheProgramOrHeats() throws Exception {
    String text = "[server]\nport = 0\n[log]\nfolder = \"%s/data\"\n".formatted(folder);
    Path config = Files.writeString(folder.resolve("tray.toml"), text);
    Mutations mutations = new Mutations(9);
    try (RunningTrayward program = RunningTrayward.start(config)) {
      int good = 0;
      for (int i = 0; i < TRIED; i++) {
        byte[] request = spoilt(mutations);
        String said = answer(program, request);
        // What escapes a handler is told as 503 here, and 500 is the server's own.
        assertFalse(
            said.startsWith("HTTP/1.1 500") || said.startsWith("HTTP/1.1 503"),
            () -> said + "\n" + new String(request, StandardCharsets.UTF_8));
        good += said.startsWith("HTTP/1.1 2") ? 1 : 0;
        if (i % 100 == 0) {
          JsonNode status = program.status();
          assertEquals("OFF", status.path("state").asText(), status.toString());
          assertFalse(status.path("heater_on").asBoolean());
        }
      }
      System.out.println(good + " of " + TRIED + " spoilt requests answered with 2xx");
      assertTrue(good > 0 && good < TRIED, good + " answered");
      program.endPolitely();
    }
    assertEquals(List.of(), LogCopies.check(folder.resolve("data"), BookModel.STANDARD).findings());
  }
}
