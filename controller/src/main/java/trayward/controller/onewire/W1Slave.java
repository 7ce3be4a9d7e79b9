package trayward.controller.onewire;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import trayward.controller.port.RawReading;

/**
 * Reads the text of a kernel {@code w1_slave} file. Pure.
 *
 * <p>Two lines: nine hexadecimal bytes, {@code : crc=XX YES} or {@code NO}; the bytes again and
 * {@code t=} in thousandths of a degree. The kernel has checked the CRC and says so; this class
 * takes its word, and looks at the bytes only for the all-zero frame that passes any CRC.
 */
public final class W1Slave {

  private static final Pattern FIRST =
      Pattern.compile("((?:[0-9a-fA-F]{2} ){9}): crc=[0-9a-fA-F]{2} (YES|NO)");
  private static final Pattern SECOND = Pattern.compile("(?:[0-9a-fA-F]{2} ){9}t=(-?[0-9]{1,6})");

  private W1Slave() {}

  /**
   * The reading in a file's text. Empty text is the usual sign of a probe that did not answer.
   *
   * @param text whole content of the file
   * @param takenNanos when the read began
   */
  public static RawReading parse(String text, long takenNanos) {
    String[] lines = text.split("\n", -1);
    if (lines.length < 2) {
      return RawReading.failed(RawReading.Kind.ABSENT, takenNanos);
    }
    Matcher first = FIRST.matcher(lines[0].trim());
    Matcher second = SECOND.matcher(lines[1].trim());
    if (!first.matches()) {
      return RawReading.failed(RawReading.Kind.ABSENT, takenNanos);
    }
    if (group(first, 2).equals("NO") || !second.matches()) {
      return RawReading.failed(RawReading.Kind.CRC_ERROR, takenNanos);
    }
    if (group(first, 1).chars().allMatch(c -> c == '0' || c == ' ')) {
      return RawReading.failed(RawReading.Kind.ALL_ZERO_FRAME, takenNanos);
    }
    return RawReading.frame(Integer.parseInt(group(second, 1)) / 1000.0, takenNanos);
  }

  private static String group(Matcher matcher, int group) {
    String found = matcher.group(group);
    return found == null ? "" : found;
  }
}
