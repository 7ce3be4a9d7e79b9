package trayward.host.store;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * What of a picture a decoder needs: size and image data, and no metadata. Metadata is neither read
 * nor passed on, because it may be anything: a decoder would unpack what is compressed in it.
 * Immutable.
 *
 * @param type {@code image/jpeg} or {@code image/png}
 * @param width width, pixels
 * @param height height, pixels
 * @param bytes the file without metadata; not to be changed
 */
@SuppressWarnings("ArrayRecordComponent") // never compared, and never handed out of the package
record PictureCore(String type, int width, int height, byte[] bytes) {

  /** Longest side, pixels: twice what any camera or flat scanner gives. */
  static final int SIDE_MAX = 20_000;

  /** Most pixels: the largest cameras give half of it. */
  static final long PIXELS_MAX = 100_000_000;

  /** What it says where a file ends too soon. */
  static final String CUT_SHORT = "it is cut short";

  PictureCore {
    // Held by the readers below before they hand anything on.
    if (width < 1 || height < 1 || width > SIDE_MAX || height > SIDE_MAX) {
      throw new IllegalArgumentException("a picture's sides are bounded");
    }
  }

  /** Reads a file of at most {@link Pictures#BYTES_MAX} bytes. */
  static PictureCore read(Path file) throws IOException, NoPicture {
    try (DataInputStream in =
        new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
      int first = in.readUnsignedShort();
      return switch (first) {
        case JpegCore.START -> JpegCore.read(in);
        case PngCore.START -> PngCore.read(in);
        default -> throw new NoPicture("it is neither JPEG nor PNG");
      };
    } catch (EOFException e) {
      throw new NoPicture(CUT_SHORT);
    }
  }

  /** Refuses sizes before anything is decoded. */
  static void checkSize(long width, long height) throws NoPicture {
    if (width < 1 || height < 1) {
      throw new NoPicture("it says it has no pixels");
    }
    if (width > SIDE_MAX || height > SIDE_MAX || width * height > PIXELS_MAX) {
      throw new NoPicture(
          String.format(
              "it says it has %d by %d pixels, at most %d a side and %d million are taken",
              width, height, SIDE_MAX, PIXELS_MAX / 1_000_000));
    }
  }
}
