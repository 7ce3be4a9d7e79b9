package trayward.host.web.guard;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How often each client may ask: so many at once, and one more after each so many ms. Time comes in
 * as a value, ms. Safe on any thread.
 */
public final class Allowance {

  /**
   * Clients remembered, those asking last: an attacker with more addresses costs no more memory.
   */
  static final int MOST_CLIENTS = 1000;

  private record Left(double asks, long atMs) {}

  private final double burst;
  private final double msPerAsk;
  private final Map<String, Left> clients =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Left> eldest) {
          return size() > MOST_CLIENTS;
        }
      };

  /**
   * Nobody has asked yet.
   *
   * @param burst how many at once
   * @param msPerAsk time after which there is one more, ms
   */
  public Allowance(int burst, double msPerAsk) {
    this.burst = burst;
    this.msPerAsk = msPerAsk;
  }

  /** Takes one ask; false where none is left. */
  public synchronized boolean take(String client, long nowMs) {
    double asks = asks(client, nowMs);
    boolean there = asks >= 1;
    clients.put(client, new Left(there ? asks - 1 : asks, nowMs));
    return there;
  }

  /** Time until there is an ask, whole s, at least 1. */
  public synchronized long waitS(String client, long nowMs) {
    double missing = Math.max(0, 1 - asks(client, nowMs));
    return Math.max(1, (long) Math.ceil(missing * msPerAsk / 1000));
  }

  /** Forgets what a client asked. */
  public synchronized void forget(String client) {
    clients.remove(client);
  }

  private double asks(String client, long nowMs) {
    Left left = clients.get(client);
    return left == null
        ? burst
        : Math.min(burst, left.asks + Math.max(0, nowMs - left.atMs) / msPerAsk);
  }
}
