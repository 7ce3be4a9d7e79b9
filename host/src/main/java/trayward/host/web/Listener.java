package trayward.host.web;

import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * One client of the stream. Nothing is written to it but what its line takes at once: one that does
 * not read misses beats, and after a while its place. Safe on any thread.
 */
final class Listener {

  /** Beats missed in a row before a client is given up: ten seconds. */
  private static final int MOST_MISSED = 40;

  private final HttpServletResponse response;
  private final BooleanSupplier admitted;
  private final Consumer<Listener> gone;
  private final CompletableFuture<Void> done = new CompletableFuture<>();
  private @Nullable ServletOutputStream out;
  private Optional<byte[]> first = Optional.empty();
  private boolean last;
  private int missed;

  Listener(HttpServletResponse response, BooleanSupplier admitted, Consumer<Listener> gone) {
    this.response = response;
    this.admitted = admitted;
    this.gone = gone;
  }

  /** Done when it listens no more. */
  CompletableFuture<Void> done() {
    return done;
  }

  /** Begins, with a first event where there is one. */
  synchronized void begin(Optional<byte[]> event) {
    first = event;
    try {
      ServletOutputStream stream = response.getOutputStream();
      out = stream;
      stream.setWriteListener(
          new WriteListener() {
            @Override
            public void onWritePossible() {
              possible();
            }

            @Override
            public void onError(Throwable failure) {
              close();
            }
          });
    } catch (IOException | IllegalStateException e) {
      close();
    }
  }

  /** One event and no more. */
  synchronized void lastWord(byte[] event) {
    last = true;
    begin(Optional.of(event));
  }

  private synchronized void possible() {
    Optional<byte[]> event = first;
    first = Optional.empty();
    event.ifPresent(this::write);
    if (last) {
      close();
    }
  }

  /** The next event, where its line takes it. */
  synchronized void offer(byte[] event) {
    if (done.isDone()) {
      return;
    }
    if (!admitted.getAsBoolean() || missed >= MOST_MISSED) {
      close();
      return;
    }
    if (first.isEmpty()) {
      write(event);
    }
  }

  private void write(byte[] event) {
    ServletOutputStream stream = out;
    try {
      if (stream == null || !stream.isReady()) {
        missed++;
        return;
      }
      missed = 0;
      stream.write(event);
      if (stream.isReady()) {
        stream.flush();
      }
    } catch (IOException | IllegalStateException e) {
      close();
    }
  }

  /** It listens no more. */
  void close() {
    gone.accept(this);
    done.complete(null);
  }
}
