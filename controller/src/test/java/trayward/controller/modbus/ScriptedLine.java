package trayward.controller.modbus;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;

/** A line whose bytes come as a test says; an empty chunk is a silence. */
final class ScriptedLine implements ByteLine {

  private static final byte[] SILENCE = {};

  final LinkedBlockingQueue<byte[]> coming = new LinkedBlockingQueue<>();
  final LinkedBlockingQueue<byte[]> sent = new LinkedBlockingQueue<>();
  final List<String> done = new ArrayList<>();
  volatile boolean gone;
  volatile boolean closed;

  /** One frame between two silences, in pieces. */
  void hear(byte[]... pieces) {
    for (byte[] piece : pieces) {
      coming.add(piece);
    }
    coming.add(SILENCE);
  }

  @Override
  public int read(byte[] into, int offset) throws IOException {
    if (gone) {
      throw new IOException("gone on purpose");
    }
    try {
      byte[] chunk = coming.take();
      if (gone) {
        throw new IOException("gone on purpose");
      }
      System.arraycopy(chunk, 0, into, offset, chunk.length);
      return chunk.length;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }

  @Override
  public void write(byte[] bytes) {
    sent.add(bytes.clone());
  }

  @Override
  public void discard() {
    done.add("discard");
  }

  @Override
  public void close() {
    closed = true;
    coming.add(SILENCE);
  }
}
