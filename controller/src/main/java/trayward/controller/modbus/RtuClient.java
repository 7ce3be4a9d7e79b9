package trayward.controller.modbus;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A client on a serial line. One thread asks; another may close. */
public final class RtuClient implements ModbusClient {

  private final ByteLine.Opener opener;
  private final int unit;
  private final int silences;
  private final byte[] frame = new byte[RtuFrame.MAX_BYTES + 1];
  private volatile @Nullable ByteLine line;
  private volatile boolean closed;

  /**
   * A client whose line is opened with the first request.
   *
   * @param opener opens the line
   * @param unit the unit it asks
   * @param patienceMs longest wait for an answer, ms
   */
  public RtuClient(ByteLine.Opener opener, int unit, int patienceMs) {
    this.opener = opener;
    this.unit = unit;
    this.silences = Math.max(1, patienceMs / ByteLine.IDLE_MS);
  }

  @Override
  public Reply ask(Pdu pdu) {
    try {
      return exchange(opened(), pdu);
    } catch (IOException e) {
      drop();
      return new Reply.Down(String.valueOf(e.getMessage()));
    }
  }

  private ByteLine opened() throws IOException {
    if (closed) {
      throw new IOException("the line was closed");
    }
    ByteLine now = line;
    if (now == null) {
      now = opener.open();
      line = now;
    }
    return now;
  }

  private Reply exchange(ByteLine open, Pdu pdu) throws IOException {
    open.discard(); // an answer that came too late answers nothing
    open.write(RtuFrame.encode(unit, pdu));
    int length = 0;
    int silent = 0;
    while (length < frame.length) {
      int expected = RtuFrame.answerLength(frame, length);
      if (expected > 0 && length >= expected) {
        break;
      }
      int came = open.read(frame, length);
      length += came;
      if (came == 0 && (length > 0 || ++silent >= silences)) {
        break; // silence ends a frame; nothing at all ends patience
      }
    }
    return judge(pdu, length);
  }

  private Reply judge(Pdu pdu, int length) {
    if (length == 0) {
      return new Reply.Silent();
    }
    return RtuFrame.parse(frame, length) instanceof RtuFrame.Parsed.Whole whole
            && whole.unit() == unit
        ? Requests.judge(pdu, whole.pdu())
        : new Reply.Garbled();
  }

  private void drop() {
    ByteLine now = line;
    line = null;
    if (now != null) {
      now.close();
    }
  }

  @Override
  public void close() {
    closed = true;
    drop();
  }
}
