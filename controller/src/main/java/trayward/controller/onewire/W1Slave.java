package trayward.controller.onewire;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import trayward.controller.port.RawReading;
import trayward.controller.port.RawReading.Kind;

/**
 * Reads the text of a kernel {@code w1_slave} file. Pure.
 *
 * <p>Two lines: nine hexadecimal bytes, {@code : crc=XX YES} or {@code NO}; the bytes again and
 * {@code t=} in thousandths of a degree. The kernel has checked the CRC and says so. Its word is
 * not enough: between the probe and here lie a driver, a file and perhaps another program, so the
 * bytes are checked again, against their CRC and against the temperature made from them. What does
 * not agree is a CRC error; what has no frame at all is an absent probe, and the usual sign of one
 * is an empty file.
 */
public final class W1Slave {

  private static final Pattern FIRST =
      Pattern.compile("((?:[0-9a-fA-F]{2} ){9}): crc=([0-9a-fA-F]{2}) (YES|NO)");
  private static final Pattern SECOND = Pattern.compile("((?:[0-9a-fA-F]{2} ){9})t=(-?[0-9]{1,6})");

  private static final int BYTES = 9;

  /** One step of a twelve-bit frame is 62.5 m°C. */
  private static final double MILLIDEGREES_A_STEP = 62.5;

  /** The kernel cuts off the half, other programs that write such a file may round it up, m°C. */
  private static final double ROUNDING = 1;

  private W1Slave() {}

  /**
   * The reading in a file's text.
   *
   * @param text whole content of the file
   * @param takenNanos when the temperature was true
   */
  public static RawReading parse(String text, long takenNanos) {
    String[] lines = text.stripTrailing().split("\r?\n", -1);
    Matcher first = FIRST.matcher(lines[0].stripTrailing());
    if (!first.matches()) {
      return RawReading.failed(Kind.ABSENT, takenNanos);
    }
    // There is a frame, so a probe answers; from here on what is wrong is wrong with the frame.
    Matcher second = SECOND.matcher(lines.length == 2 ? lines[1] : "");
    if (!group(first, 3).equals("YES") || !second.matches()) {
      return RawReading.failed(Kind.CRC_ERROR, takenNanos);
    }
    int[] frame = bytes(group(first, 1));
    int millidegrees = Integer.parseInt(group(second, 2));
    boolean sound =
        Crc8.of(frame, BYTES - 1) == frame[BYTES - 1]
            && Integer.parseInt(group(first, 2), 16) == frame[BYTES - 1]
            && group(first, 1).equalsIgnoreCase(group(second, 1))
            && agrees(frame, millidegrees);
    if (!sound) {
      return RawReading.failed(Kind.CRC_ERROR, takenNanos);
    }
    for (int each : frame) {
      if (each != 0) {
        return RawReading.frame(millidegrees / 1000.0, takenNanos);
      }
    }
    return RawReading.failed(Kind.ALL_ZERO_FRAME, takenNanos);
  }

  /**
   * Whether a temperature can have come of a frame: sixteen bits, the lowest 1/16 K. Bits 5 and 6
   * of the configuration say how many of the lowest count, twelve down to nine; the data sheet
   * leaves the others undefined and a driver may keep or clear them, so as much is allowed. A chip
   * that sets bit 7, which the data sheet has as 0, offers finer bits in the configuration, and the
   * kernel adds them: up to a step more.
   */
  private static boolean agrees(int[] frame, int millidegrees) {
    int steps = (short) (frame[1] << 8 | frame[0]);
    int undefined = (8 >> (frame[4] >> 5 & 3)) - 1;
    double below = undefined * MILLIDEGREES_A_STEP;
    double above = (frame[4] & 0x80) == 0 ? 0 : MILLIDEGREES_A_STEP;
    double off = millidegrees - steps * MILLIDEGREES_A_STEP;
    return off >= -below - ROUNDING && off <= above + ROUNDING;
  }

  private static int[] bytes(String hex) {
    int[] bytes = new int[BYTES];
    for (int i = 0; i < BYTES; i++) {
      bytes[i] = Integer.parseInt(hex.substring(3 * i, 3 * i + 2), 16);
    }
    return bytes;
  }

  private static String group(Matcher matcher, int group) {
    String found = matcher.group(group);
    return found == null ? "" : found;
  }
}
