package trayward.host.web.guard;

/**
 * What the rules look at in a request; a header that is not there is empty.
 *
 * @param method of HTTP
 * @param path decoded, dots resolved
 * @param host the {@code Host} header
 * @param localAddress the address of this computer that was reached
 * @param origin the {@code Origin} header
 * @param fetchSite the {@code Sec-Fetch-Site} header
 * @param fetchMode the {@code Sec-Fetch-Mode} header
 * @param contentType the {@code Content-Type} header
 * @param bodyBytes length of its body; 0 for none, -1 where it does not say
 */
public record Asked(
    String method,
    String path,
    String host,
    String localAddress,
    String origin,
    String fetchSite,
    String fetchMode,
    String contentType,
    long bodyBytes) {

  /** Whether it may change something (RFC 9110, 9.2.1). */
  public boolean unsafe() {
    return !method.equals("GET") && !method.equals("HEAD") && !method.equals("OPTIONS");
  }

  /** Whether it is of the JSON interface. */
  public boolean api() {
    return path.startsWith("/api/") || path.equals("/healthz");
  }

  /** Whether a browser sends it: only these say where a request comes from. */
  boolean browser() {
    return !origin.isEmpty() || !fetchSite.isEmpty();
  }
}
