package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;
import trayward.host.link.Command;
import trayward.host.web.guard.Door;
import trayward.host.web.guard.PasswordHash;
import trayward.host.web.guard.Sessions;

/** A page that asks for a password, and one that does not stand at the tray. */
class LoginTest {

  private static final String RIGHT = "{\"password\":\"correct horse\"}";
  private static final String WRONG = "{\"password\":\"battery staple\"}";
  private static final PasswordHash HASH =
      PasswordHash.of("correct horse".toCharArray(), new SecureRandom());

  @TempDir Path folder;

  private final AtomicLong nowMs = new AtomicLong();
  private LocalPage page;

  @BeforeEach
  void begin() throws Exception {
    Door door =
        new Door("127.0.0.1", 0, false, List.of("tray.local"), Optional.of(HASH), Optional.empty());
    page = new LocalPage(folder, door, nowMs::get);
  }

  @AfterEach
  void end() {
    page.close();
  }

  private RawHttp.Answer once(String request, String body, String... headers) throws IOException {
    return RawHttp.once(page.port(), request, body, headers);
  }

  private String cookie() throws IOException {
    RawHttp.Answer in = once("POST /api/login", RIGHT);
    assertEquals(200, in.status(), in.body());
    return "Cookie: " + in.header("Set-Cookie").split(";", -1)[0];
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GET /api/status",
        "GET /api/stream",
        "GET /healthz",
        "GET /page.js",
        "GET /white.js",
        "GET /api/openapi.json",
        "POST /api/marks",
        "POST /api/commands/acknowledge",
        "PUT /api/set-temperature",
        "GET /api//status",
        "GET //api/status",
        "GET /api/status/",
        "GET /api/status;x",
        "GET /login.html/../api/status",
        "GET /login.html;/../api/status",
        "GET /%61pi/status",
        "GET /login.html%2f..%2fapi/status",
        "OPTIONS /api/status",
        "POST /api/commands/stop/../start",
        "POST /api/commands/stop;/../start"
      })
  void whoeverIsNotLoggedInGetsNothing(String request) throws Exception {
    RawHttp.Answer answer = once(request, "");
    assertTrue(answer.status() == 401 || answer.status() == 400, request + answer.head());
    assertFalse(answer.body().contains("bath_c"), request);
    assertEquals(List.of(), page.tray.asked.stream().filter(c -> c != Command.STOP).toList());
  }

  @Test
  void thePagesLeadToTheLoginAndTheLoginIsThere() throws Exception {
    for (String path : new String[] {"/", "/index.html", "/white.html"}) {
      RawHttp.Answer answer = once("GET " + path, "");
      assertEquals(303, answer.status(), path);
      assertTrue(answer.header("Location").endsWith("/login.html"), answer.head());
    }
    for (String file : new String[] {"login.html", "login.js", "login.css", "page.css"}) {
      assertEquals(200, once("GET /" + file, "").status(), file);
    }
  }

  @Test
  void whoKnowsThePasswordIsLetInByACookieThatNoScriptAndNoOtherSiteSees() throws Exception {
    RawHttp.Answer in = once("POST /api/login", RIGHT);
    String set = in.header("Set-Cookie");
    assertTrue(set.contains("HttpOnly") && set.contains("SameSite=Strict"), set);
    assertTrue(set.contains("Path=/") && !set.contains("Secure") && !set.contains("Domain"), set);
    String cookie = "Cookie: " + set.split(";", -1)[0];
    assertEquals(200, once("GET /api/status", "", cookie).status());
    assertEquals(200, once("GET /", "", cookie).status());
    assertEquals(200, once("POST /api/logout", "", cookie).status());
    assertEquals(401, once("GET /api/status", "", cookie).status());
  }

  @Test
  void aWrongPasswordIsNotToldBackAndFiveAreEnough() throws Exception {
    for (int i = 0; i < 5; i++) {
      RawHttp.Answer wrong = once("POST /api/login", WRONG);
      assertEquals(401, wrong.status());
      assertFalse(wrong.body().contains("staple"), wrong.body());
      assertEquals("", wrong.header("Set-Cookie"));
    }
    RawHttp.Answer more = once("POST /api/login", RIGHT);
    assertEquals(429, more.status());
    assertEquals("30", more.header("Retry-After"));
    nowMs.addAndGet(30_000);
    assertEquals(200, once("POST /api/login", RIGHT).status());
  }

  @Test
  void aLoginFromAnotherSiteOrOfAnotherShapeIsNone() throws Exception {
    assertEquals(403, once("POST /api/login", RIGHT, "Origin: http://evil.example").status());
    assertEquals(421, once("POST /api/login", RIGHT, "Host: evil.example").status());
    for (String body : new String[] {"", "{}", "{\"password\":1}", "{\"password\":\"short\"}"}) {
      assertEquals(400, once("POST /api/login", body).status(), body);
    }
    assertEquals(413, once("POST /api/login", "x".repeat(3000)).status());
    assertEquals(413, once("POST /api/login", "", "Transfer-Encoding: chunked").status());
    String login = RIGHT.replace("}", ",\"user\":\"x\"}");
    assertEquals(400, once("POST /api/login", login).status());
  }

  @Test
  void aSessionEndsByItsAge() throws Exception {
    String cookie = cookie();
    nowMs.addAndGet(Sessions.IDLE_MS - 1);
    assertEquals(200, once("GET /api/status", "", cookie).status());
    nowMs.addAndGet(Sessions.IDLE_MS);
    assertEquals(401, once("GET /api/status", "", cookie).status());
    assertEquals(401, once("POST /api/marks", "{\"kind\":\"in\"}", cookie).status());
  }

  @Test
  void whoLogsOutHearsNoMore() throws Exception {
    String cookie = cookie();
    try (RawHttp stream = new RawHttp(page.port())) {
      stream.send(
          "GET /api/stream HTTP/1.1\r\nHost: tray.local\r\nConnection: close\r\n"
              + cookie
              + "\r\n\r\n");
      assertEquals(200, stream.answer().status());
      assertEquals(200, once("POST /api/logout", "", cookie).status());
      assertTrue(stream.rest().contains("event: status")); // it ends, or this would wait on
    }
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopNeedsNoLogin() throws Exception {
    assertEquals(200, once("POST /api/commands/stop", "").status());
    assertEquals(List.of(Command.STOP), page.tray.asked);
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void aPageThatDoesNotStandAtTheTrayNeitherStartsNorResetsNorShowsPresence() throws Exception {
    String cookie = cookie();
    for (String command : new String[] {"start", "reset", "presence"}) {
      RawHttp.Answer answer = once("POST /api/commands/" + command, "", cookie);
      assertEquals(409, answer.status());
      assertTrue(answer.body().contains("host_at_tray"), answer.body());
    }
    String sure = "{\"confirmed\":true}";
    assertEquals(409, once("POST /api/commands/start", sure, cookie).status());
    assertEquals(201, once("POST /api/marks", "{\"kind\":\"in\"}", cookie).status());
    assertEquals(List.of(), page.tray.asked);
    for (String command : new String[] {"acknowledge", "stop"}) {
      assertEquals(200, once("POST /api/commands/" + command, "", cookie).status(), command);
    }
  }
}
