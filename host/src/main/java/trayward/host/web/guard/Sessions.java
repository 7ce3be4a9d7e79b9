package trayward.host.web.guard;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;

/**
 * Who is logged in. Only hashes of the tokens are kept, in memory: a restart ends all of them. Time
 * comes in as a value, ms. Safe on any thread.
 */
public final class Sessions {

  /** A long day in the darkroom without a touch. */
  public static final long IDLE_MS = 16L * 3_600_000;

  /** However often it is used. */
  public static final long AGE_MS = 7L * 24 * 3_600_000;

  /** More screens than a darkroom has; the one that was unused the longest makes room. */
  static final int MOST = 32;

  /** 256 bits: nobody guesses it. */
  private static final int TOKEN_BYTES = 32;

  /** Longer than any token of ours. */
  private static final int MOST_CHARS = 64;

  private record Stay(long sinceMs, long usedMs) {
    boolean over(long nowMs) {
      return nowMs - sinceMs >= AGE_MS || nowMs - usedMs >= IDLE_MS;
    }
  }

  private final SecureRandom random;
  private final Map<String, Stay> stays = new HashMap<>();

  /** Nobody is logged in. */
  public Sessions(SecureRandom random) {
    this.random = random;
  }

  /** Somebody has shown to know the password: a new token. */
  public synchronized String open(long nowMs) {
    stays.values().removeIf(stay -> stay.over(nowMs));
    if (stays.size() >= MOST) {
      stays.entrySet().stream()
          .min(Map.Entry.comparingByValue((a, b) -> Long.compare(a.usedMs, b.usedMs)))
          .ifPresent(oldest -> stays.remove(oldest.getKey()));
    }
    byte[] token = new byte[TOKEN_BYTES];
    random.nextBytes(token);
    String text = Base64.getUrlEncoder().withoutPadding().encodeToString(token);
    stays.put(key(text), new Stay(nowMs, nowMs));
    return text;
  }

  /** Whether a token is of somebody logged in; being used keeps it. */
  public synchronized boolean use(String token, long nowMs) {
    if (token.isEmpty() || token.length() > MOST_CHARS) {
      return false;
    }
    String key = key(token);
    Stay stay = stays.get(key);
    if (stay == null || stay.over(nowMs)) {
      stays.remove(key);
      return false;
    }
    stays.put(key, new Stay(stay.sinceMs, nowMs));
    return true;
  }

  /** Ends a session. */
  public synchronized void end(String token) {
    if (token.length() <= MOST_CHARS) {
      stays.remove(key(token));
    }
  }

  private static String key(String token) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java machine has SHA-256", e);
    }
  }
}
