package trayward.host.web.guard;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a request must be like, whoever sends it: asked for under this computer's own name (against
 * rebinding of names), from the page's own site where a browser sends it, with a body of a kind
 * that a form of another site cannot send. Stateless.
 */
public final class Rules {

  /** The longest notes fit ten times. */
  public static final long MAX_BODY = 64 * 1024;

  /** What somebody who is not let in yet may say, bytes: the longest password, escaped. */
  private static final long MAX_LOGIN = 2048;

  private static final String LOGIN = "/api/login";

  /** Where a picture may be sent, which has a bound of its own. */
  public static final Pattern PICTURES = Pattern.compile("/api/prints/[0-9]{1,15}/pictures");

  /** Addresses in numbers: the platform asks no name service for these. */
  private static final Pattern NUMBERS =
      Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,3}){3}|[0-9a-f.]*:[0-9a-f:.]*");

  private static final Set<String> OWN = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final Set<String> TYPES = Set.of("application/json", "image/jpeg", "image/png");

  private final Set<String> hosts;

  /** The rules of a door. */
  public Rules(Door door) {
    Set<String> all = new HashSet<>(OWN);
    all.add(bracketed(door.address()));
    all.addAll(door.names());
    hosts = Set.copyOf(all);
  }

  /** Why a request goes no further; empty where it may. */
  public Optional<Refusal> judge(Asked asked) {
    for (Optional<Refusal> refusal : List.of(host(asked), site(asked), type(asked), size(asked))) {
      if (refusal.isPresent()) {
        return refusal;
      }
    }
    return Optional.empty();
  }

  private Optional<Refusal> host(Asked asked) {
    String name = withoutPort(asked.host().toLowerCase(Locale.ROOT));
    if (hosts.contains(name) || reached(name, asked.localAddress())) {
      return Optional.empty();
    }
    return Optional.of(
        new Refusal(
            421,
            "Misdirected request",
            "this page is not asked for under that name: a further one is [server] names"));
  }

  /**
   * Whether a name is the very address that was reached, in numbers: no name can be rebound to it.
   */
  private static boolean reached(String name, String localAddress) {
    String address = name.startsWith("[") ? name.substring(1, name.length() - 1) : name;
    if (!NUMBERS.matcher(address).matches() || !NUMBERS.matcher(localAddress).matches()) {
      return false;
    }
    try {
      return InetAddress.getByName(address).equals(InetAddress.getByName(localAddress));
    } catch (UnknownHostException e) {
      return false;
    }
  }

  private static Optional<Refusal> site(Asked asked) {
    boolean guarded = asked.unsafe() || asked.api();
    if (guarded && !(sameOrigin(asked) && sameSite(asked))) {
      return Optional.of(
          new Refusal(403, "Another site", "asked by a page of another site: only this one may"));
    }
    return Optional.empty();
  }

  private static boolean sameOrigin(Asked asked) {
    int at = asked.origin().indexOf("://");
    return asked.origin().isEmpty()
        || (at > 0 && asked.origin().substring(at + 3).equalsIgnoreCase(asked.host()));
  }

  /** A link that a person follows or writes is no page's request, and a read at that. */
  private static boolean sameSite(Asked asked) {
    return switch (asked.fetchSite()) {
      case "", "same-origin", "none" -> true;
      default -> !asked.unsafe() && asked.fetchMode().equals("navigate");
    };
  }

  private static Optional<Refusal> type(Asked asked) {
    String type = asked.contentType().split(";", -1)[0].strip().toLowerCase(Locale.ROOT);
    boolean body = asked.bodyBytes() != 0;
    if (asked.unsafe() && asked.browser() && body && !TYPES.contains(type)) {
      return Optional.of(
          new Refusal(
              415, "Unsupported type", "a page sends application/json, image/jpeg or image/png"));
    }
    return Optional.empty();
  }

  private static Optional<Refusal> size(Asked asked) {
    boolean login = asked.path().equals(LOGIN);
    if (login && (asked.bodyBytes() < 0 || asked.bodyBytes() > MAX_LOGIN)) {
      return Optional.of(
          new Refusal(
              413, "Too large", "a login says its length, " + MAX_LOGIN + " bytes at most"));
    }
    if (asked.bodyBytes() > MAX_BODY && !PICTURES.matcher(asked.path()).matches()) {
      return Optional.of(
          new Refusal(413, "Too large", "a body of more than " + MAX_BODY + " bytes is not read"));
    }
    return Optional.empty();
  }

  private static String withoutPort(String host) {
    int end = host.startsWith("[") ? host.indexOf(']') + 1 : host.indexOf(':');
    return end <= 0 ? host : host.substring(0, end);
  }

  private static String bracketed(String address) {
    return address.indexOf(':') >= 0 ? "[" + address + "]" : address;
  }
}
