package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import trayward.host.link.LinkAnswer;
import trayward.host.link.TrayLink;
import trayward.host.web.guard.Allowance;
import trayward.host.web.guard.Asked;
import trayward.host.web.guard.Entrance;
import trayward.host.web.guard.Refusal;
import trayward.host.web.guard.Rules;

/**
 * Stands before everything else. A stop goes straight to the controller, whoever sends it (SR-14);
 * every other request is judged first. Safe on any thread; nothing here waits.
 */
final class Guard extends Handler.Wrapper {

  private static final String STOP = "/api/commands/stop";

  private static final String LOGIN_PAGE = "/login.html";

  /** What somebody who is not logged in may ask for. */
  private static final Set<String> OPEN =
      Set.of(LOGIN_PAGE, "/login.js", "/login.css", "/page.css", "/api/login");

  /** Where a person comes in; without a session they are shown the login. */
  private static final Set<String> PAGES = Set.of("/", "/index.html", "/white.html");

  /** Requests of one client at once: white pages with all their parts, several times over. */
  private static final int BURST = 1000;

  /** One more after so many ms: more than a busy script asks. */
  private static final double MS_PER_REQUEST = 3;

  private static final int TOO_LARGE = 413;

  /**
   * The rest of a body that was refused is read and thrown away up to so many bytes, by no thread
   * that waits: many clients never see the answer on a line that is closed while they still send.
   */
  private static final long READ_ON_MAX = 1 << 20;

  private static final Refusal TOO_MANY =
      new Refusal(429, "Too many requests", "too many requests from there: ask again in a moment");

  private static final Refusal LOG_IN =
      new Refusal(401, "Log in first", "log in first: the password is asked for at " + LOGIN_PAGE);

  /** What goes with every answer; pages and pictures say more of what may be loaded. */
  private static final Map<String, String> HEADERS =
      Map.of(
          "X-Content-Type-Options", "nosniff",
          "Referrer-Policy", "no-referrer",
          "X-Frame-Options", "DENY",
          "Cross-Origin-Resource-Policy", "same-origin",
          "Cross-Origin-Opener-Policy", "same-origin");

  private final Rules rules;
  private final Entrance entrance;
  private final StopDesk stops;
  private final TrayLink link;
  private final LongSupplier nowMs;
  private final Allowance allowance = new Allowance(BURST, MS_PER_REQUEST);

  Guard(Rules rules, Entrance entrance, StopDesk stops, TrayLink link, LongSupplier nowMs) {
    this.rules = rules;
    this.entrance = entrance;
    this.stops = stops;
    this.link = link;
    this.nowMs = nowMs;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    Asked asked = asked(request);
    HttpFields.Mutable headers = response.getHeaders();
    HEADERS.forEach(headers::put);
    if (asked.api()) {
      headers.put("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
      headers.put(HttpHeader.CACHE_CONTROL, "no-store");
    }
    if (asked.method().equals("POST") && asked.path().equals(STOP)) {
      stops.ask(answer -> stopped(answer, response, callback));
      return true;
    }
    Optional<Refusal> refusal = refusal(asked, request);
    if (refusal.isPresent()
        && refusal.get().status() == LOG_IN.status()
        && PAGES.contains(asked.path())) {
      Response.sendRedirect(request, response, callback, 303, LOGIN_PAGE, true);
      return true;
    }
    if (refusal.isPresent()) {
      Answers.refuse(response, readOn(asked, request, refusal.get(), callback), refusal.get());
      return true;
    }
    return super.handle(request, response, callback);
  }

  /** What comes after a refusal: the rest of a body that was too large, where it is not long. */
  private static Callback readOn(Asked asked, Request request, Refusal why, Callback callback) {
    boolean told = asked.bodyBytes() > 0 && asked.bodyBytes() <= READ_ON_MAX;
    if (why.status() != TOO_LARGE || !told) {
      return callback;
    }
    Callback read = Callback.from(callback::succeeded, unread -> callback.succeeded());
    return Callback.from(() -> Content.Source.consumeAll(request, read), callback::failed);
  }

  private Optional<Refusal> refusal(Asked asked, Request request) {
    Optional<Refusal> unruly = rules.judge(asked);
    if (unruly.isPresent()) {
      return unruly;
    }
    if (!allowance.take(client(request), nowMs.getAsLong())) {
      return Optional.of(TOO_MANY);
    }
    boolean in = OPEN.contains(asked.path()) || entrance.admits(token(request));
    return in ? Optional.empty() : Optional.of(LOG_IN);
  }

  private static Asked asked(Request request) {
    HttpFields h = request.getHeaders();
    boolean sized = h.contains(HttpHeader.CONTENT_LENGTH);
    boolean chunked = h.contains(HttpHeader.TRANSFER_ENCODING);
    long bytes = sized ? Math.max(0, request.getLength()) : chunked ? -1 : 0;
    return new Asked(
        request.getMethod(),
        Request.getPathInContext(request),
        said(h, "Host"),
        Request.getLocalAddr(request),
        said(h, "Origin"),
        said(h, "Sec-Fetch-Site"),
        said(h, "Sec-Fetch-Mode"),
        said(h, "Content-Type"),
        bytes);
  }

  private static String said(HttpFields headers, String name) {
    String value = headers.get(name);
    return value == null ? "" : value;
  }

  private static String client(Request request) {
    return String.valueOf(Request.getRemoteAddr(request));
  }

  private static String token(Request request) {
    for (HttpCookie cookie : Request.getCookies(request)) {
      if (cookie.getName().equals(LoginApi.COOKIE)) {
        return String.valueOf(cookie.getValue());
      }
    }
    return "";
  }

  private void stopped(LinkAnswer answer, Response response, Callback callback) {
    if (answer instanceof LinkAnswer.Done) {
      ObjectNode node = Json.MAPPER.createObjectNode();
      node.put("command", "stop");
      node.put("accepted", true);
      link.latest().ifPresent(s -> node.put("state", s.state()));
      Answers.write(response, callback, 200, "application/json; charset=utf-8", node);
      return;
    }
    String why =
        answer instanceof LinkAnswer.NotDelivered not
            ? not.why()
            : "the controller did not carry it out";
    Answers.refuse(response, callback, new Refusal(503, "Not delivered", why));
  }
}
