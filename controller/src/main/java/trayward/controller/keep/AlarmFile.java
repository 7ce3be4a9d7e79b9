package trayward.controller.keep;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The alarm record's two files: lines are added to the current one and forced to the disk; once it
 * is full it takes the older one's name and place. It may block; one thread at a time, never the
 * scan's.
 */
final class AlarmFile {

  private static final Logger LOG = LoggerFactory.getLogger(AlarmFile.class);

  /**
   * Lines in a file. Two files hold the last 1000 to 2000 steps: a trip takes four to six from its
   * beginning to the reset, so that is some 200 trips at least, years of a tray that is well and
   * weeks of one that is not. In all they stay under a megabyte or so, which reads at once.
   */
  static final int MAX_LINES = 1000;

  /** A line is under 1 kB, so a larger file is not ours: it is not read, and makes way. */
  private static final int MAX_BYTES = MAX_LINES * 1024;

  private final Path current;
  private final Path old;
  // The current file as this program left it; -1 where it has not looked yet.
  private long end = -1;
  private int lines;
  private boolean ragged; // its last line has no end
  private boolean unfinished; // a write failed: what lies behind the end is ours and worthless

  /** What was found on the disk. */
  record Found(List<AlarmEntry> entries, int skipped) {}

  AlarmFile(Path current, Path old) {
    this.current = current;
    this.old = old;
  }

  /** Every step on record, oldest first; a line that cannot be believed is skipped and counted. */
  Found load() {
    List<AlarmEntry> entries = new ArrayList<>();
    return new Found(entries, read(old, entries) + read(current, entries));
  }

  private static int read(Path file, List<AlarmEntry> into) {
    int skipped = 0;
    try {
      byte[] bytes = bytes(file);
      if (bytes.length > MAX_BYTES) {
        LOG.error("{} is too large to be an alarm record: it is not read", file);
        return 1;
      }
      // Bytes that are no text become lines that fail their check sum, not an exception.
      String text = new String(bytes, StandardCharsets.UTF_8);
      for (String line : text.split("\n", -1)) {
        Optional<AlarmEntry> entry = AlarmText.read(line);
        entry.ifPresent(into::add);
        skipped += entry.isPresent() || line.isEmpty() ? 0 : 1;
      }
    } catch (NoSuchFileException e) {
      return 0;
    } catch (IOException e) {
      LOG.error("{} cannot be read: {}", file, e.toString());
      return 1;
    }
    return skipped;
  }

  /** Its bytes, and one more than are allowed where there are more: it may be endless. */
  private static byte[] bytes(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(MAX_BYTES + 1);
    }
  }

  /**
   * Adds steps, oldest first, and takes each from {@code waiting} once it is durable. With none
   * waiting it only tries whether it could.
   */
  void append(Deque<AlarmEntry> waiting) throws IOException {
    do {
      look();
      if (lines >= MAX_LINES && !waiting.isEmpty()) {
        rotate();
      }
      int room = Math.max(0, MAX_LINES - lines);
      List<AlarmEntry> next = waiting.stream().limit(room).toList();
      write(next);
      for (int i = 0; i < next.size(); i++) {
        waiting.removeFirst();
      }
    } while (!waiting.isEmpty());
  }

  /** Counts anew where the file is not as this program left it. */
  private void look() throws IOException {
    long size = Files.exists(current) ? Files.size(current) : 0;
    if (unfinished && end >= 0 && size >= end) {
      return; // the next write cuts it off
    }
    if (size == end) {
      return;
    }
    if (size > MAX_BYTES) {
      lines = MAX_LINES;
    } else {
      byte[] bytes = size == 0 ? new byte[0] : bytes(current);
      lines = 0;
      for (byte b : bytes) {
        lines += b == '\n' ? 1 : 0;
      }
      ragged = bytes.length > 0 && bytes[bytes.length - 1] != '\n';
      lines += ragged ? 1 : 0;
    }
    end = size;
  }

  private void rotate() throws IOException {
    Files.move(current, old, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    WholeFile.forceFolderOf(current);
    end = 0;
    lines = 0;
    ragged = false;
    unfinished = false;
  }

  private void write(List<AlarmEntry> entries) throws IOException {
    // A torn last line gets an end, so that it spoils no other.
    StringBuilder text = new StringBuilder(ragged && !entries.isEmpty() ? "\n" : "");
    entries.forEach(entry -> text.append(AlarmText.write(entry)));
    ByteBuffer bytes = ByteBuffer.wrap(text.toString().getBytes(StandardCharsets.UTF_8));
    boolean made = end == 0;
    long at = end;
    boolean cut = unfinished;
    unfinished = true;
    try (FileChannel channel =
        FileChannel.open(current, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      if (cut) {
        channel.truncate(end);
      }
      while (bytes.hasRemaining()) {
        at += channel.write(bytes, at);
      }
      channel.force(true);
    }
    if (made) {
      WholeFile.forceFolderOf(current);
    }
    unfinished = false;
    ragged &= entries.isEmpty();
    end = at;
    lines += entries.size();
  }
}
