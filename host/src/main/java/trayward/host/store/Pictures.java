package trayward.host.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.session.Correction;
import trayward.host.session.PrintPicture;

/**
 * Brings in pictures of prints. Safe on any thread; one picture is decoded at a time, so that many
 * cannot fill the memory. The original is kept byte for byte, what it says of itself (EXIF) too;
 * that is never read.
 */
public final class Pictures {

  /** Largest file, bytes: what a good camera writes, and a card of the Pi holds thousands. */
  public static final int BYTES_MAX = 12 * 1024 * 1024;

  private static final Logger LOG = LoggerFactory.getLogger(Pictures.class);
  private static final String ACCEPTED = "a JPEG or PNG picture of at most 12 MB";

  private final LogConnection log;
  private final PictureFiles files;
  private final Object decoding = new Object();

  Pictures(LogConnection log) {
    this.log = log;
    this.files = PictureFiles.of(log.file());
    try {
      files.clear();
    } catch (IOException e) {
      LOG.warn("what was left half brought in stays in {}: {}", files.folder(), e.toString());
    }
  }

  /**
   * Brings in a picture: file first, safe on the disk, then its line in the log.
   *
   * @param body the file as it comes; at most one byte more than {@link #BYTES_MAX} is read
   * @throws IOException where the sender breaks off
   * @throws LogFailed where it cannot be kept
   */
  public Checked<PrintPicture> add(long print, InputStream body, Instant wall) throws IOException {
    Optional<Problem> problem = log.read(handle -> noRoom(handle, print));
    if (problem.isPresent()) {
      return new Checked.Bad<>(problem.get());
    }
    Path original = part();
    Path small = part();
    try {
      long bytes = receive(body, original);
      PictureCore core;
      synchronized (decoding) {
        core = PictureCore.read(original);
        Files.write(small, Thumbnail.of(core));
      }
      String end = core.type().equals("image/png") ? ".png" : ".jpg";
      String name = "print-" + print + "-" + UUID.randomUUID() + end;
      PrintPicture picture =
          new PrintPicture(0, print, name, core.type(), core.width(), core.height(), bytes, wall);
      return keep(picture, original, small);
    } catch (NoPicture e) {
      return new Checked.Bad<>(new Problem("body", "no picture: " + e.why(), ACCEPTED));
    } finally {
      Files.deleteIfExists(original);
      Files.deleteIfExists(small);
    }
  }

  private Path part() {
    try {
      return files.part();
    } catch (IOException e) {
      throw failed(e);
    }
  }

  private LogFailed failed(IOException e) {
    return new LogFailed(files.folder() + " could not be written: " + e.getMessage() + ".", e);
  }

  /** Writes what comes to a file and no more of it than is taken. */
  private long receive(InputStream body, Path to) throws IOException, NoPicture {
    byte[] some = new byte[64 * 1024];
    long bytes = 0;
    try (OutputStream out = Files.newOutputStream(to)) {
      int n = body.read(some);
      while (n >= 0) {
        bytes += n;
        if (bytes > BYTES_MAX) {
          throw new NoPicture("it is larger than 12 MB");
        }
        write(out, some, n);
        n = body.read(some);
      }
    }
    return bytes;
  }

  private void write(OutputStream out, byte[] some, int n) {
    try {
      out.write(some, 0, n);
    } catch (IOException e) {
      throw failed(e);
    }
  }

  private Checked<PrintPicture> keep(PrintPicture picture, Path original, Path small) {
    Path whole = files.of(picture.file(), false);
    Path wholeSmall = files.of(picture.file(), true);
    boolean kept = false;
    try {
      PictureFiles.name(original, whole);
      PictureFiles.name(small, wholeSmall);
      files.forceNames();
      Checked<PrintPicture> added =
          log.write(
              handle -> {
                Optional<Problem> problem = noRoom(handle, picture.print());
                return problem.isPresent()
                    ? new Checked.Bad<>(problem.get())
                    : new Checked.Good<>(PictureRows.add(handle, picture));
              });
      kept = added instanceof Checked.Good<PrintPicture>;
      return added;
    } catch (IOException e) {
      throw failed(e);
    } finally {
      if (!kept) {
        discard(whole);
        discard(wholeSmall);
      }
    }
  }

  private static void discard(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      LOG.warn("{} is in no log and stays: {}", file, e.toString());
    }
  }

  private static Optional<Problem> noRoom(Handle handle, long print) {
    String number = Long.toString(print);
    if (PrintRows.byNumber(handle, print).isEmpty()) {
      return Optional.of(new Problem("print", number, "a print that is in the log"));
    }
    return PictureRows.of(handle, print).size() >= PrintPicture.PICTURES_MAX
        ? Optional.of(
            new Problem(
                "print",
                number,
                "a print with fewer than " + PrintPicture.PICTURES_MAX + " pictures"))
        : Optional.empty();
  }

  /** Takes a picture back; the log and the folder keep it. Empty where there is none. */
  public Optional<PrintPicture> takeBack(long id, Instant wall) {
    return log.write(
        handle -> {
          Optional<PrintPicture> gone = PictureRows.byId(handle, id);
          gone.ifPresent(
              picture -> {
                PictureRows.takeBack(handle, id, wall);
                CorrectionRows.keep(
                    handle,
                    new Correction(
                        wall,
                        Correction.Thing.PRINT,
                        picture.print(),
                        "picture " + id,
                        picture.file(),
                        ""));
              });
          return gone;
        });
  }
}
