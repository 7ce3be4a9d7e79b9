package trayward.host.web;

import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sends the status to every listening page four times a second, and at once where a person should
 * see that something changed; written once for all. One thread of its own, which never waits for a
 * client; clients come and go on others.
 */
final class StatusStream implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(StatusStream.class);

  /** More pages than a darkroom has screens. */
  private static final int MAX_CLIENTS = 64;

  /** How often is looked for news: twice a scan, so that a change waits for half of one at most. */
  private static final long LOOK_MS = 50;

  /** Every so many looks without news the status is sent all the same. */
  private static final int LOOKS = 5;

  private final StatusJson status;
  private final Set<Listener> clients = ConcurrentHashMap.newKeySet();
  private final ScheduledExecutorService executor =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "stream");
            thread.setDaemon(true);
            return thread;
          });

  // Of the sending thread alone.
  private Optional<List<Object>> sign = Optional.empty();
  private int looks;

  StatusStream(StatusJson status) {
    this.status = status;
  }

  void start() {
    var unused = executor.scheduleAtFixedRate(this::look, LOOK_MS, LOOK_MS, TimeUnit.MILLISECONDS);
  }

  /**
   * Lets a client listen, from within an asynchronous request.
   *
   * @param admitted whether it still may
   * @return done when it listens no more
   */
  CompletableFuture<Void> join(HttpServletResponse response, BooleanSupplier admitted) {
    Listener client = new Listener(response, admitted, clients::remove);
    if (clients.size() >= MAX_CLIENTS) {
      client.lastWord(event("full", "too many pages are listening"));
      return client.done();
    }
    client.begin(status.now().map(now -> event("status", Json.write(now))));
    clients.add(client);
    if (client.done().isDone()) {
      clients.remove(client); // it was gone before it was there
    }
    return client.done();
  }

  private static byte[] event(String name, String data) {
    return ("event: " + name + "\ndata: " + data + "\n\n").getBytes(StandardCharsets.UTF_8);
  }

  private void look() {
    try {
      if (clients.isEmpty()) {
        return;
      }
      Optional<List<Object>> before = sign;
      sign = status.sign();
      looks++;
      if (looks < LOOKS && sign.equals(before)) {
        return;
      }
      looks = 0;
      // Without a controller nothing is sent, and the page says that the connection is lost.
      Optional<byte[]> now = status.now().map(s -> event("status", Json.write(s)));
      now.ifPresent(text -> clients.forEach(client -> client.offer(text)));
    } catch (RuntimeException e) {
      LOG.warn("the stream missed a beat", e);
    }
  }

  @Override
  public void close() {
    executor.shutdownNow();
    clients.forEach(Listener::close);
  }
}
