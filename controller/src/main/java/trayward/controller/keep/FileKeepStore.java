package trayward.controller.keep;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The record in one small file, replaced whole: written beside it, forced to the disk, renamed
 * over.
 *
 * <p>A thread of its own writes, because a card may take long to force a write and the scan must
 * not wait. The mailbox holds one record: a newer one replaces an older one not yet written.
 */
public final class FileKeepStore implements KeepStore {

  private static final Logger LOG = LoggerFactory.getLogger(FileKeepStore.class);

  /** A write that takes longer than this counts as failed: a card that hangs is no record. */
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(5);

  private static final int POLL_MS = 50;

  /** A record that could not be written is tried again after a second of nothing new. */
  private static final int RETRY_POLLS = 1000 / POLL_MS;

  /** Largest record read; a real one is under 400 bytes, so anything larger is not ours. */
  private static final int MAX_BYTES = 4096;

  /** A record on its way to the disk, with its place among all offered. */
  private record Waiting(KeepRecord record, long number) {}

  private final Path file;
  private final ArrayBlockingQueue<Waiting> mailbox = new ArrayBlockingQueue<>(1);
  private final AtomicLong offered = new AtomicLong();
  private final Thread writer;
  private volatile boolean failed;
  private volatile long written;
  private volatile boolean closing;
  // Scan thread only: when the record that is still pending was first seen to be.
  private long pendingSinceNanos = Long.MIN_VALUE;

  /** Keeps the record in {@code file}, whose folder must exist. */
  public FileKeepStore(Path file) {
    this.file = file;
    this.writer = new Thread(this::writeUntilClosed, "keep-writer");
    writer.setDaemon(true);
    writer.start();
  }

  @Override
  public KeepLoad load() {
    try {
      if (Files.size(file) > MAX_BYTES) {
        return new KeepLoad.Unreadable(file + " is too large to be the controller's record");
      }
      KeepLoad load = KeepText.read(Files.readString(file, StandardCharsets.UTF_8));
      return load instanceof KeepLoad.Unreadable bad
          ? new KeepLoad.Unreadable(file + ": " + bad.why())
          : load;
    } catch (NoSuchFileException e) {
      return new KeepLoad.Loaded(KeepRecord.CLEAN);
    } catch (IOException e) {
      return new KeepLoad.Unreadable(file + " cannot be read: " + e.getMessage());
    }
  }

  @Override
  public void offer(KeepRecord record) {
    Waiting waiting = new Waiting(record, offered.incrementAndGet());
    while (!mailbox.offer(waiting)) {
      Waiting stale = mailbox.poll();
      LOG.debug("a newer record replaces {}", stale);
    }
  }

  @Override
  public boolean writable(long nowNanos) {
    if (offered.get() == written) {
      pendingSinceNanos = Long.MIN_VALUE;
    } else if (pendingSinceNanos == Long.MIN_VALUE) {
      pendingSinceNanos = nowNanos;
    }
    boolean overdue =
        pendingSinceNanos != Long.MIN_VALUE && nowNanos - pendingSinceNanos > PATIENCE_NANOS;
    return !failed && !overdue;
  }

  @Override
  public void close() {
    closing = true;
    try {
      writer.join(TimeUnit.NANOSECONDS.toMillis(PATIENCE_NANOS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void writeUntilClosed() {
    Waiting last = null;
    int idlePolls = 0;
    while (true) {
      Waiting waiting = next();
      if (waiting == null && closing && mailbox.isEmpty()) {
        return; // closing seen: whatever was offered is too
      }
      idlePolls = waiting == null ? idlePolls + 1 : 0;
      if (failed && idlePolls >= RETRY_POLLS) {
        // Nobody may ever offer another record: a lockout with an old one must find its way out.
        waiting = last;
        idlePolls = 0;
      }
      if (waiting != null) {
        failed = !replace(waiting.record);
        written = waiting.number;
        last = waiting;
      }
    }
  }

  private @Nullable Waiting next() {
    try {
      return mailbox.poll(POLL_MS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      closing = true;
      return null;
    }
  }

  private boolean replace(KeepRecord record) {
    try {
      WholeFile.replace(file, KeepText.write(record));
      return true;
    } catch (IOException e) {
      if (!failed) { // told once, not at every retry
        LOG.error("the controller's record {} cannot be written: {}", file, e.toString());
      }
      return false;
    }
  }
}
