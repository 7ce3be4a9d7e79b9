package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import trayward.host.web.guard.Refusal;

/** Answers given before a request reaches the interface; none of them waits. Stateless. */
final class Answers {

  private Answers() {}

  /** An RFC 9457 problem; where it passes by itself, when to ask again. */
  static void refuse(Response response, Callback callback, Refusal refusal) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    node.put("type", "about:blank");
    node.put("title", refusal.title());
    node.put("status", refusal.status());
    node.put("detail", refusal.detail());
    if (refusal.status() == 429 || refusal.status() == 503) {
      response.getHeaders().put(HttpHeader.RETRY_AFTER, "1");
    }
    write(response, callback, refusal.status(), "application/problem+json; charset=utf-8", node);
  }

  static void write(
      Response response, Callback callback, int status, String type, ObjectNode node) {
    response.setStatus(status);
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, type);
    byte[] text = Json.write(node).getBytes(StandardCharsets.UTF_8);
    response.write(true, ByteBuffer.wrap(text), callback);
  }
}
