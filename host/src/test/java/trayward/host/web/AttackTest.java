package trayward.host.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;
import trayward.host.link.Command;
import trayward.host.session.PrintField;
import trayward.host.web.guard.Door;

/** What others may try against the page of a computer where nobody is asked for a password. */
class AttackTest {

  private static final String MARK = "POST /api/marks";
  private static final String IN = "{\"kind\":\"in\"}";
  private static final String START = "POST /api/commands/start";
  private static final String STOP = "POST /api/commands/stop";

  @TempDir Path folder;

  private LocalPage page;

  @BeforeEach
  void begin() throws Exception {
    page = new LocalPage(folder);
  }

  @AfterEach
  void end() {
    page.close();
  }

  private RawHttp.Answer once(String request, String body, String... headers) throws IOException {
    return RawHttp.once(page.port(), request, body, headers);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Origin: http://evil.example",
        "Origin: null",
        "Origin: https://127.0.0.1.evil.example",
        "Origin: http://127.0.0.1:1",
        "Sec-Fetch-Site: cross-site",
        "Sec-Fetch-Site: same-site"
      })
  void aPageOfAnotherSiteChangesNothing(String sign) throws Exception {
    assertEquals(403, once(START, "", sign).status());
    assertEquals(403, once(START, "", sign, "Sec-Fetch-Mode: navigate").status());
    assertEquals(403, once(MARK, IN, sign, "Content-Type: text/plain").status());
    assertEquals(403, once("PUT /api/set-temperature", "{\"celsius\":50}", sign).status());
    assertEquals(403, once("DELETE /api/prints/1/steps/1", "", sign).status());
    assertEquals(403, once("GET /api/status", "", sign).status());
    assertEquals(403, once("GET /api/stream", "", sign).status());
    assertEquals(List.of(), page.tray.asked);
    assertTrue(page.log.currentPrint().isEmpty());
  }

  @Test
  void thePageItselfAndAProgramWithoutABrowserAreServed() throws Exception {
    String own = "Origin: http://127.0.0.1:" + page.port();
    String host = "Host: 127.0.0.1:" + page.port();
    String json = "Content-Type: application/json";
    assertEquals(200, once(START, "", own, host, "Sec-Fetch-Site: same-origin").status());
    assertEquals(201, once(MARK, IN, own, host, json).status());
    assertEquals(201, once(MARK, IN).status());
    String form = "Content-Type: application/x-www-form-urlencoded"; // as curl -d says
    assertEquals(201, once(MARK, IN, form).status());
    assertEquals(200, once("GET /api/status", "", "Sec-Fetch-Site: none").status());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"text/plain", "application/x-www-form-urlencoded", "multipart/form-data", ""})
  void aFormInABrowserIsNoWayToChangeAnything(String type) throws Exception {
    String own = "Origin: http://127.0.0.1";
    assertEquals(415, once(MARK, IN, own, "Content-Type: " + type).status());
    assertTrue(page.log.currentPrint().isEmpty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "evil.example",
        "evil.example:8467",
        "127.0.0.1.evil.example",
        "localhost.evil.example",
        "evil.example@127.0.0.1",
        "[::2]",
        "10.1.2.3",
        ""
      })
  void aNameThatWasReboundToThisComputerIsNotServed(String name) throws Exception {
    String host = "Host: " + name;
    for (String request : new String[] {"GET /api/status", "GET /", "GET /page.js", START}) {
      int status = once(request, "", host).status();
      assertTrue(status == 421 || status == 400, request + " under " + name + ": " + status);
    }
    assertEquals(List.of(), page.tray.asked);
  }

  @Test
  void aRequestThatSaysNoNameOrTwoIsNotServed() throws Exception {
    try (RawHttp raw = new RawHttp(page.port())) {
      assertEquals(421, raw.send("GET /api/status HTTP/1.0\r\n\r\n").answer().status());
    }
    int two = once("GET /api/status", "", "Host: 127.0.0.1", "Host: evil.example").status();
    assertEquals(400, two);
    int other = once("GET http://evil.example/api/status", "", "Host: 127.0.0.1").status();
    assertTrue(other == 400 || other == 421, "another name in the request line: " + other);
  }

  @ParameterizedTest
  @ValueSource(strings = {"localhost", "127.0.0.1", "[::1]", "LOCALHOST:8467", "localhost:9000"})
  void thisComputersOwnNamesAreServed(String name) throws Exception {
    assertEquals(200, once("GET /api/status", "", "Host: " + name).status());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../../../../etc/passwd",
        "/..%2f..%2f..%2fetc/passwd",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/uplot/../../openapi.json",
        "/uplot/..%5c..%5copenapi.json",
        "/..;/..;/openapi.json",
        "/.../openapi.json",
        "/page.js%00.html",
        "//etc/passwd",
        "/uplot//../../../logback.xml",
        "/api/pictures/..%2f..%2ftrayward-log.db",
        "/api/pictures/%2e%2e/small",
        "/api/prints/..%2f1/trace.csv"
      })
  void noPathLeadsOutOfThePages(String path) throws Exception {
    RawHttp.Answer answer = once("GET " + path, "");
    assertTrue(answer.status() >= 400 && answer.status() < 500, path + ": " + answer.head());
    assertFalse(answer.body().contains("root:") || answer.body().contains("\"openapi\""), path);
  }

  @Test
  void whatIsTooLargeIsRefusedAndNotRead() throws Exception {
    String much = "x".repeat(100_000);
    assertEquals(413, once(MARK, much).status());
    assertEquals(413, once(MARK, "", "Content-Length: 999999999999").status());
    assertEquals(431, once("GET /api/status", "", "X-Much: " + "x".repeat(20_000)).status());
    int url = once("GET /api/prints?q=" + "x".repeat(20_000), "").status();
    assertTrue(url == 414 || url == 431, "a long address: " + url);
    try (RawHttp raw = new RawHttp(page.port())) {
      raw.send(RawHttp.text(MARK, "", "Transfer-Encoding: chunked"));
      String chunk = "4000\r\n" + "x".repeat(0x4000) + "\r\n"; // never an end
      assertEquals(413, refusedWhile(raw, chunk));
    }
    assertEquals(200, once("GET /api/status", "").status());
  }

  /** Sends for as long as it is taken; a line that is closed counts as refused. */
  private static int refusedWhile(RawHttp raw, String chunk) throws IOException {
    try {
      for (int i = 0; i < 100; i++) {
        raw.send(chunk);
      }
    } catch (IOException e) {
      return 413;
    }
    return raw.answer().status();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{",
        "[]",
        "null",
        "\"in\"",
        "{\"kind\":}",
        "{\"kind\":\"in\"}{\"kind\":\"in\"}",
        "{\"kind\":[\"in\"]}",
        "{\"kind\":{\"$ne\":1}}",
        "{\"kind\":\"in\",\"kind2\":1}",
        "{\"kind\":1e999}",
        "{\"__proto__\":{}}",
        "\u0000",
        "{'kind':'in'}",
        "<kind>in</kind>"
      })
  void whatIsNoRequestIsABadOne(String body) throws Exception {
    for (String request :
        new String[] {
          MARK,
          "PUT /api/set-temperature",
          "POST /api/baths",
          "POST /api/shelf",
          "POST /api/top-ups",
          "PUT /api/in-tray",
          "POST /api/login"
        }) {
      int status = once(request, body).status();
      boolean login = request.endsWith("login") && status == 409; // nobody needs to log in
      assertTrue(status == 400 || login, request + " " + body + ": " + status);
    }
    assertTrue(page.log.currentPrint().isEmpty());
  }

  @Test
  void aThousandBracketsAreNoDeeperThanOne() throws Exception {
    assertEquals(400, once(MARK, "[".repeat(30_000)).status());
    assertEquals(400, once(MARK, "{\"kind\":".repeat(5_000)).status());
  }

  @Test
  void statementsInTextsStayTexts() throws Exception {
    String evil = "x'); DROP TABLE prints; DELETE FROM marks; --\" OR 1=1 /*";
    String said = evil.replace("\"", "\\\"");
    long id = page.mark("in", 10).path("id").asLong();
    int tried = 0;
    for (PrintField field : PrintField.values()) {
      String body = "{\"" + field.rule().name() + "\":\"" + said + "\"}";
      int status = once("PATCH /api/prints/" + id, body).status();
      assertTrue(status == 200 || status == 400, body + ": " + status);
      tried += status == 200 ? 1 : 0;
    }
    assertTrue(tried > 5, "only " + tried + " fields take a text");
    page.ok(200, "PATCH", "/api/prints/" + id, "{\"title\":\"" + said + "\"}");
    long session = page.ok(200, "POST", "/api/sessions", "").path("id").asLong();
    page.ok(200, "PATCH", "/api/sessions/" + session, "{\"symptoms\":\"" + said + "\"}");
    page.ok(201, "POST", "/api/baths", "{\"name\":\"" + said + "\",\"litres\":1}");
    page.ok(201, "POST", "/api/shelf", "{\"kind\":\"concentrate\",\"name\":\"" + said + "\"}");
    for (String q :
        new String[] {
          "'%20OR%201=1", "%22", "NEAR(", "a*%20OR%20b", "title:x", "%27);DROP", "^-"
        }) {
      int status = once("GET /api/prints?q=" + q, "").status();
      assertTrue(status == 200 || status == 400, q + ": " + status);
    }
    int where = once("GET /api/prints?paper=x%27%20OR%20%271%27=%271", "").status();
    assertEquals(200, where);
    assertEquals(evil, page.ok(200, "GET", "/api/prints/" + id, "").path("title").asText());
    assertEquals(1, page.ok(200, "GET", "/api/prints", "").size());
  }

  @Test
  void everyAnswerSaysThatItIsForThisPageAlone() throws Exception {
    for (String path : new String[] {"/", "/white.html", "/page.js", "/api/status", "/nothing"}) {
      RawHttp.Answer answer = once("GET " + path, "");
      assertEquals("nosniff", answer.header("X-Content-Type-Options"), path);
      assertEquals("no-referrer", answer.header("Referrer-Policy"), path);
      assertEquals("DENY", answer.header("X-Frame-Options"), path);
      assertEquals("", answer.header("Server"), path);
    }
    String page = once("GET /", "").header("Content-Security-Policy");
    assertTrue(page.contains("script-src 'self'") && !page.contains("unsafe"), page);
    assertTrue(
        page.contains("frame-ancestors 'none'") && page.contains("default-src 'none'"), page);
    RawHttp.Answer api = once("GET /api/status", "");
    assertEquals("no-store", api.header("Cache-Control"));
    assertTrue(api.header("Content-Security-Policy").contains("default-src 'none'"), api.head());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void aPageThatStandsAtTheTrayStartsAndResetsWhenAPersonAsks() throws Exception {
    assertEquals(200, once(START, "").status());
    assertEquals(200, once("POST /api/commands/reset", "").status());
    assertEquals(List.of(Command.START, Command.RESET), page.tray.asked);
  }

  @Test
  @Verifies(value = "SR-14", side = Side.ALLOWS)
  void whatIsNoStopStopsNothing() throws Exception {
    for (String no : new String[] {"GET", "PUT", "DELETE"}) {
      assertTrue(once(no + " /api/commands/stop", "").status() >= 400, no);
    }
    assertEquals(404, once(STOP + "s", "").status());
    assertEquals(List.of(), page.tray.asked);
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopPassesWhateverElseIsWrongWithIt() throws Exception {
    List<String[]> rude =
        List.of(
            new String[] {"Host: evil.example"},
            new String[] {"Origin: http://evil.example", "Sec-Fetch-Site: cross-site"},
            new String[] {"Content-Type: text/plain"},
            new String[] {"Cookie: trayward_session=wrong"});
    for (String[] headers : rude) {
      assertEquals(200, once(STOP, "{]", headers).status(), headers[0]);
    }
    assertEquals(200, once(STOP, "x".repeat(100_000)).status());
    assertEquals(List.of(Command.STOP), page.tray.asked.stream().distinct().toList());
    assertEquals(5, page.tray.asked.size());
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopPassesWhileSlowRequestsAndSlowPicturesHoldTheLine() throws Exception {
    long id = page.mark("in", 10).path("id").asLong();
    List<RawHttp> slow = new ArrayList<>();
    try {
      for (int i = 0; i < 60; i++) {
        RawHttp raw = new RawHttp(page.port());
        slow.add(raw);
        raw.send(
            switch (i % 3) {
              case 0 -> "GET /api/status HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Slow: a";
              case 1 -> RawHttp.text(MARK, "", "Content-Length: 60000") + "{";
              default ->
                  RawHttp.text(
                          "POST /api/prints/" + id + "/pictures",
                          "",
                          "Content-Type: image/png",
                          "Content-Length: 9000000")
                      + "\u0089PNG";
            });
      }
      assertEquals(200, once(STOP, "").status());
      assertEquals(
          List.of(Command.STOP), page.tray.asked.stream().filter(c -> c == Command.STOP).toList());
      assertEquals(200, once("GET /api/status", "").status(), "and others are served meanwhile");
    } finally {
      for (RawHttp each : slow) {
        each.close();
      }
    }
  }

  @Test
  void oneClientThatAsksWithoutEndIsTurnedAwayAndItsStopIsNot() throws Exception {
    page.close();
    page = new LocalPage(folder, Door.local(), () -> 0); // a clock that gives no further allowance
    int refused = 0;
    try (RawHttp raw = new RawHttp(page.port())) {
      for (int i = 0; i < 12; i++) {
        raw.send(RawHttp.text("GET /nothing", "").repeat(100));
        for (int k = 0; k < 100; k++) {
          refused += raw.answer().status() == 429 ? 1 : 0;
        }
      }
      assertEquals(200, refused, "of 1200 requests all above a thousand");
      assertEquals(200, raw.send(RawHttp.text(STOP, "")).answer().status());
    }
  }

  @Test
  void oneMoreStreamThanThereIsRoomForIsToldSo() throws Exception {
    List<RawHttp> streams = new ArrayList<>();
    try {
      for (int i = 0; i < 80; i++) {
        RawHttp raw = new RawHttp(page.port());
        streams.add(raw);
        raw.send(RawHttp.text("GET /api/stream", ""));
        assertEquals(200, raw.answer().status());
      }
      try (RawHttp one = new RawHttp(page.port())) {
        one.send("GET /api/stream HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n");
        String said = one.rest();
        assertTrue(said.contains("event: full"), said);
      }
      assertEquals(200, once(STOP, "").status());
      assertEquals(200, once("GET /api/status", "").status());
    } finally {
      for (RawHttp each : streams) {
        each.close();
      }
    }
  }

  @Test
  void aPictureThatClaimsToBeHugeIsRefusedBeforeItIsDecoded() throws Exception {
    long id = page.mark("in", 10).path("id").asLong();
    byte[] head = {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13, 'I', 'H', 'D', 'R'};
    byte[] bomb = new byte[64];
    System.arraycopy(head, 0, bomb, 0, head.length);
    bomb[18] = (byte) 0xff; // 65 280 by 65 280 pixels
    bomb[22] = (byte) 0xff;
    bomb[24] = 8;
    var answer = page.send("POST", "/api/prints/" + id + "/pictures", "image/png", bomb);
    assertEquals(400, answer.statusCode(), new String(answer.body(), StandardCharsets.UTF_8));
  }
}
