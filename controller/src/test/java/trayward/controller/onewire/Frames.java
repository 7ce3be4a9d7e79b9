package trayward.controller.onewire;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Texts as the kernel's w1_therm driver writes them. */
public final class Frames {

  private Frames() {}

  /** Two lines of nine bytes as given, with the driver's verdict and temperature. */
  public static String text(String bytes, String verdict, String t) {
    return "%s : crc=%s %s\n%s t=%s\n".formatted(bytes, bytes.substring(24), verdict, bytes, t);
  }

  /** A sound twelve-bit frame of so many sixteenths of a degree. */
  public static String steps(int steps) {
    return steps(steps, 0x7f);
  }

  /** A sound frame with a configuration byte. */
  static String steps(int steps, int configuration) {
    return text(bytes(steps, configuration), "YES", Integer.toString(steps * 1000 / 16));
  }

  static String bytes(int steps, int configuration) {
    int[] frame = {steps & 0xff, steps >> 8 & 0xff, 0x4b, 0x46, configuration, 0xff, 0x0c, 0x10, 0};
    frame[8] = Crc8.of(frame, 8);
    return IntStream.of(frame)
        .mapToObj(each -> String.format(Locale.ROOT, "%02x", each))
        .collect(Collectors.joining(" "));
  }
}
