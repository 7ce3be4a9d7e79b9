package trayward.controller.keep;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The durable record of alarms after ISA-18.2 / IEC 62682: every step of every alarm, with its
 * time. {@link #add} by one thread, which may block on the disk and is never the scan's; the rest
 * from any, and from memory. A failure is told and withholds nothing: the latch has its own record.
 */
public final class AlarmRecord {

  /** Most steps kept, and most that may be asked for: both files full. */
  public static final int MOST = 2 * AlarmFile.MAX_LINES;

  private static final Logger LOG = LoggerFactory.getLogger(AlarmRecord.class);

  /**
   * Steps held for a disk that fails, a file's worth: beyond it the oldest are lost and counted.
   */
  private static final int MAX_WAITING = AlarmFile.MAX_LINES;

  private final AlarmFile file;
  private final int skipped;
  private final Deque<AlarmEntry> waiting = new ArrayDeque<>(); // the writer's own
  private final Deque<AlarmEntry> recent; // newest last; guarded by this
  private long overflowed; // guarded by this
  private long missed; // guarded by this
  private volatile boolean ok = true;

  /**
   * Opens the record and tries whether it can be written.
   *
   * @param current the file in use, whose folder must exist
   * @param old where it goes once it is full
   */
  public AlarmRecord(Path current, Path old) {
    this.file = new AlarmFile(current, old);
    AlarmFile.Found found = file.load();
    this.recent = new ArrayDeque<>(found.entries());
    this.skipped = found.skipped();
    write();
  }

  /** Adds steps, oldest first, and writes whatever waits; without steps it retries a failure. */
  public void add(List<AlarmEntry> steps) {
    for (AlarmEntry step : steps) {
      if (waiting.size() >= MAX_WAITING && ok) {
        write();
      }
      if (waiting.size() >= MAX_WAITING) {
        waiting.removeFirst();
        overflow();
      }
      waiting.addLast(step);
      remember(step);
    }
    if (!ok || !waiting.isEmpty()) {
      write();
    }
  }

  private void write() {
    try {
      file.append(waiting);
      if (!ok) {
        LOG.info("the alarm record takes what is written again");
      }
      ok = true;
    } catch (IOException e) {
      if (ok) { // told once, not at every retry
        LOG.error("the alarm record cannot be written, heat control goes on: {}", e.toString());
      }
      ok = false;
    }
  }

  private synchronized void overflow() {
    overflowed++;
  }

  private synchronized void remember(AlarmEntry step) {
    if (recent.size() >= MOST) {
      recent.removeFirst();
    }
    recent.addLast(step);
  }

  /** Tells how many steps were dropped in all before they came here. */
  public synchronized void missed(long steps) {
    missed = steps;
  }

  /** The newest steps first, also those that still wait for the disk. */
  public synchronized List<AlarmEntry> newest(int most) {
    List<AlarmEntry> steps = new ArrayList<>();
    Iterator<AlarmEntry> back = recent.descendingIterator();
    while (back.hasNext() && steps.size() < most) {
      steps.add(back.next());
    }
    return steps;
  }

  /** Whether the last write went well. */
  public boolean ok() {
    return ok;
  }

  /** Lines on the disk that could not be believed at power-up. */
  public int skipped() {
    return skipped;
  }

  /** Steps since power-up that will never be on the disk. */
  public synchronized long lost() {
    return overflowed + missed;
  }
}
