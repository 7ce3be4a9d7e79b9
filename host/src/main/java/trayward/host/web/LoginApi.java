package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.util.List;
import trayward.host.web.guard.Entrance;
import trayward.host.web.guard.PasswordHash;
import trayward.host.web.guard.Sessions;

/** Logging in and out. Safe on any thread. */
final class LoginApi {

  /** The cookie that says who is logged in. */
  static final String COOKIE = "trayward_session";

  private final Entrance entrance;
  private final boolean secure;

  /**
   * The requests over an entrance.
   *
   * @param secure whether the page is served by TLS, so that the cookie goes no other way
   */
  LoginApi(Entrance entrance, boolean secure) {
    this.entrance = entrance;
    this.secure = secure;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/login", this::tell);
    routes.post("/api/login", this::enter);
    routes.post("/api/logout", this::leave);
  }

  /** The token that a request brings; empty where it brings none. */
  static String token(Context ctx) {
    String token = ctx.cookie(COOKIE);
    return token == null ? "" : token;
  }

  private void tell(Context ctx) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("password", entrance.guarded());
    node.put("logged_in", entrance.admits(token(ctx)));
    Json.answer(ctx, 200, node);
  }

  private void enter(Context ctx) {
    if (!entrance.guarded()) {
      throw Refused.conflict("no password is set: nobody needs to log in");
    }
    ObjectNode body = Json.body(ctx, List.of("password"));
    String accepted =
        "a text of " + PasswordHash.LEAST + " to " + PasswordHash.MOST + " characters";
    String password = secret(body, accepted);
    Entrance.Try tried = entrance.enter(ctx.req().getRemoteAddr(), password.toCharArray());
    if (tried instanceof Entrance.Try.Wait wait) {
      ctx.header("Retry-After", Long.toString(wait.seconds()));
      throw Refused.tooMany("too many tries: the next one in " + wait.seconds() + " s");
    }
    if (tried instanceof Entrance.Try.In in) {
      ctx.cookie(cookie(in.token(), (int) (Sessions.AGE_MS / 1000)));
      Json.answer(ctx, 200, Json.MAPPER.createObjectNode().put("logged_in", true));
      return;
    }
    throw Refused.notKnown("that is not the password");
  }

  /** What was said is not told back, as other wrong fields are. */
  private static String secret(ObjectNode body, String accepted) {
    if (!body.path("password").isTextual()) {
      throw Refused.field("password", "no text", accepted);
    }
    String password = body.path("password").textValue();
    if (!PasswordHash.fits(password.length())) {
      throw Refused.field("password", password.length() + " characters", accepted);
    }
    return password;
  }

  private void leave(Context ctx) {
    entrance.leave(token(ctx));
    ctx.cookie(cookie("", 0));
    Json.answer(ctx, 200, Json.MAPPER.createObjectNode().put("logged_in", false));
  }

  private Cookie cookie(String value, int ageS) {
    Cookie cookie = new Cookie(COOKIE, value);
    cookie.setPath("/");
    cookie.setMaxAge(ageS);
    cookie.setHttpOnly(true);
    cookie.setSecure(secure);
    cookie.setSameSite(SameSite.STRICT);
    return cookie;
  }
}
