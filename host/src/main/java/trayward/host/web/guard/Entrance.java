package trayward.host.web.guard;

import java.security.SecureRandom;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.function.LongSupplier;

/** Lets people in by the password, where one is set. Safe on any thread. */
public final class Entrance {

  /** Tries of one client at once; a wet finger mistypes twice or thrice. */
  private static final int TRIES = 5;

  /** One more try a client, ms: a list of a million words takes a year. */
  private static final double MS_PER_TRY = 30_000;

  /** Tries of all clients together: a network of attackers gets no further than ten clients. */
  private static final int ALL_TRIES = 50;

  private static final double ALL_MS_PER_TRY = 3_000;

  private static final String ALL = "all";

  private final Optional<PasswordHash> password;
  private final LongSupplier nowMs;
  private final Sessions sessions = new Sessions(new SecureRandom());
  private final Allowance tries = new Allowance(TRIES, MS_PER_TRY);
  private final Allowance allTries = new Allowance(ALL_TRIES, ALL_MS_PER_TRY);
  // Stretching costs a core for a second: one at a time, whoever asks.
  private final Semaphore stretching = new Semaphore(1);

  /**
   * Nobody is in.
   *
   * @param password what must be known; empty where nobody is asked
   * @param nowMs monotonic time, ms
   */
  public Entrance(Optional<PasswordHash> password, LongSupplier nowMs) {
    this.password = password;
    this.nowMs = nowMs;
  }

  /** What became of a try. */
  public sealed interface Try {
    /**
     * Let in.
     *
     * @param token for the cookie
     */
    record In(String token) implements Try {}

    /** Not the password. */
    record Wrong() implements Try {}

    /**
     * Too many tries.
     *
     * @param seconds until the next one
     */
    record Wait(long seconds) implements Try {}
  }

  /** Whether anybody is asked at all. */
  public boolean guarded() {
    return password.isPresent();
  }

  /** Whether the bearer of this token may come in. */
  public boolean admits(String token) {
    return !guarded() || sessions.use(token, nowMs.getAsLong());
  }

  /** A client tries a password. */
  public Try enter(String client, char[] said) {
    if (password.isEmpty()) {
      return new Try.Wrong();
    }
    long now = nowMs.getAsLong();
    if (!tries.take(client, now)) {
      return new Try.Wait(tries.waitS(client, now));
    }
    if (!allTries.take(ALL, now)) {
      return new Try.Wait(allTries.waitS(ALL, now));
    }
    if (!stretching.tryAcquire()) {
      return new Try.Wait(2);
    }
    try {
      if (!password.get().matches(said)) {
        return new Try.Wrong();
      }
    } finally {
      stretching.release();
    }
    tries.forget(client);
    return new Try.In(sessions.open(nowMs.getAsLong()));
  }

  /** Ends the session of a token. */
  public void leave(String token) {
    sessions.end(token);
  }
}
