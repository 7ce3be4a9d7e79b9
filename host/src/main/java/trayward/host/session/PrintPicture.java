package trayward.host.session;

import java.time.Instant;

/**
 * A picture of a print. Immutable.
 *
 * @param id id in the log, counts from 1
 * @param print number of the print
 * @param file name of the original in the folder of pictures
 * @param type {@code image/jpeg} or {@code image/png}
 * @param width width, pixels
 * @param height height, pixels
 * @param bytes size of the original, bytes
 * @param wall when it was brought in, wall-clock time
 */
public record PrintPicture(
    long id,
    long print,
    String file,
    String type,
    int width,
    int height,
    long bytes,
    Instant wall) {

  /** Most pictures of one print: front, back, wet, dry, and details. */
  public static final int PICTURES_MAX = 20;
}
