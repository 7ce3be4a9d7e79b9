package trayward.controller.modbus;

import java.io.IOException;

/** An open line of bytes. One thread reads and writes; another may close it. */
public interface ByteLine extends AutoCloseable {

  /** Longest wait for the first byte of a frame, ms: the system counts tenths of a second. */
  int IDLE_MS = 100;

  /**
   * Waits for bytes: for the first of a frame, at offset 0, at most {@link #IDLE_MS}; within one at
   * most {@link RtuServer#SILENCE_MS}.
   *
   * @param into where they go
   * @param offset from which place on
   * @return how many came; 0 where the line stayed silent
   * @throws IOException where the line is gone
   */
  int read(byte[] into, int offset) throws IOException;

  /** Sends all of {@code bytes}. */
  void write(byte[] bytes) throws IOException;

  /** Forgets what has come and was not read. */
  void discard() throws IOException;

  @Override
  void close();

  /** Opens a line; may be tried again and again. */
  @FunctionalInterface
  interface Opener {
    /**
     * A fresh line.
     *
     * @throws IOException with one sentence a person can act on
     */
    ByteLine open() throws IOException;
  }
}
