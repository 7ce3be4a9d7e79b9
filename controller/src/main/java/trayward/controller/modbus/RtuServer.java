package trayward.controller.modbus;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A server on a serial line, on a thread of its own. A frame is what stands between two silences.
 * What is no whole frame for this unit gets no answer and changes nothing; a line that goes is
 * opened again for as long as it takes.
 */
public final class RtuServer implements AutoCloseable {

  /**
   * Silence that ends a frame, ms. The guide's 3.5 characters are under 2 ms at 19200 baud, but
   * adapters on USB deliver in batches of about 16 ms.
   */
  public static final int SILENCE_MS = 25;

  /** Between two attempts to open the line: it must be back well within three seconds. */
  private static final long RETRY_NANOS = 500_000_000L;

  private static final Logger LOG = LoggerFactory.getLogger(RtuServer.class);

  private final ByteLine.Opener opener;
  private final int unit;
  private final Responder responder;
  private final Thread thread;
  // One byte more than a frame may have, so that a longer run of bytes shows.
  private final byte[] frame = new byte[RtuFrame.MAX_BYTES + 1];
  private final byte[] beyond = new byte[RtuFrame.MAX_BYTES];
  private volatile boolean closing;
  private boolean told;

  /**
   * A server that has not started.
   *
   * @param opener opens the line
   * @param unit the unit it answers for, 1 to 247; broadcasts are not acted on
   * @param responder makes the answers
   */
  public RtuServer(ByteLine.Opener opener, int unit, Responder responder) {
    this.opener = opener;
    this.unit = unit;
    this.responder = responder;
    this.thread = new Thread(this::serveUntilClosed, "station");
    thread.setDaemon(true);
  }

  /** Starts serving. */
  public void start() {
    thread.start();
  }

  private void serveUntilClosed() {
    while (!closing) {
      try (ByteLine line = opener.open()) {
        LOG.info("the host's serial line is open");
        told = false;
        serve(line);
      } catch (IOException | RuntimeException e) {
        tell(e);
        LockSupport.parkNanos(RETRY_NANOS);
      }
    }
  }

  private void tell(Exception e) {
    if (!told && !closing) {
      LOG.warn("{}: tried again until it works", e.getMessage());
      told = true;
    }
  }

  private void serve(ByteLine line) throws IOException {
    int length = 0;
    while (!closing) {
      boolean full = length == frame.length;
      int came = full ? line.read(beyond, 0) : line.read(frame, length);
      if (came > 0) {
        length = full ? length : length + came;
        continue;
      }
      if (length > 0) {
        answer(line, length);
        length = 0;
      }
    }
  }

  private void answer(ByteLine line, int length) throws IOException {
    if (RtuFrame.parse(frame, length) instanceof RtuFrame.Parsed.Whole whole
        && whole.unit() == unit) {
      line.write(RtuFrame.encode(unit, responder.answer(whole.pdu())));
    }
  }

  @Override
  public void close() {
    closing = true;
    LockSupport.unpark(thread);
    try {
      thread.join(TimeUnit.SECONDS.toMillis(1));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
