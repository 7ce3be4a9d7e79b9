package trayward.controller.transmitter;

import java.util.Arrays;
import java.util.Locale;

/** How a number lies in sixteen-bit registers. */
public enum RegisterType {
  /** One register, two's complement. */
  INT16(1),
  /** One register, from 0 on. */
  UINT16(1),
  /** Two registers, two's complement. */
  INT32(2),
  /** Two registers, IEEE 754 single precision. */
  FLOAT32(2);

  private final int words;

  RegisterType(int words) {
    this.words = words;
  }

  /** How many registers it takes. */
  public int words() {
    return words;
  }

  /** As configuration calls it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The type of a configuration's word, which must be one of them. */
  public static RegisterType of(String word) {
    return Arrays.stream(values())
        .filter(type -> type.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  /**
   * The number in registers.
   *
   * @param registers as many as {@link #words}, each 0 to 65535, in the order of the line
   * @param lowWordFirst whether the first of two is the lower half; the standard does not say
   */
  double number(int[] registers, boolean lowWordFirst) {
    int first = registers[0];
    int both = words == 1 ? first : two(first, registers[1], lowWordFirst);
    return switch (this) {
      case INT16 -> (short) both;
      case UINT16 -> both & 0xffff;
      case INT32 -> both;
      case FLOAT32 -> Float.intBitsToFloat(both);
    };
  }

  private static int two(int first, int second, boolean lowWordFirst) {
    int high = lowWordFirst ? second : first;
    int low = lowWordFirst ? first : second;
    return (high << 16) | (low & 0xffff);
  }
}
