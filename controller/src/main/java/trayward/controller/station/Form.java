package trayward.controller.station;

/** How a value stands in registers; two registers have their high word first. */
public enum Form {
  /** One register, 0 to 65534; 65535 is not valid. */
  COUNT(1, 1, 0, 0xFFFE, "unsigned"),
  /** One register of single bits. */
  BITS(1, 1, 0, 0xFFFF, "bits"),
  /** One register, signed hundredths; 0x8000 is not valid. */
  HUNDREDTHS(1, 100, -32_767, 32_767, "signed, hundredths"),
  /** One register, signed thousandths; 0x8000 is not valid. */
  THOUSANDTHS(1, 1000, -32_767, 32_767, "signed, thousandths"),
  /** Two registers, 0 to 4294967294; 4294967295 is not valid. */
  LONG_COUNT(2, 1, 0, 0xFFFF_FFFEL, "unsigned, 2 registers"),
  /** Two registers, signed tenths; 0x80000000 is not valid. */
  LONG_TENTHS(2, 10, -0x7FFF_FFFFL, 0x7FFF_FFFFL, "signed, tenths, 2 registers"),
  /** Two registers, signed thousandths; 0x80000000 is not valid. */
  LONG_THOUSANDTHS(2, 1000, -0x7FFF_FFFFL, 0x7FFF_FFFFL, "signed, thousandths, 2 registers"),
  /** Two registers, signed millionths; 0x80000000 is not valid. */
  LONG_MILLIONTHS(2, 1_000_000, -0x7FFF_FFFFL, 0x7FFF_FFFFL, "signed, millionths, 2 registers"),
  /** UTF-8, two bytes a register, the first in the high one; zeros fill it up. */
  TEXT(0, 1, 0, 0, "text");

  private final int words;
  private final double scale;
  private final long min;
  private final long max;
  private final String description;

  Form(int words, double scale, long min, long max, String description) {
    this.words = words;
    this.scale = scale;
    this.min = min;
    this.max = max;
    this.description = description;
  }

  /** Registers it takes; 0 where the entry says. */
  int words() {
    return words;
  }

  /** For the printed table. */
  String description() {
    return description;
  }

  /** Writes a number; one that is none, or does not fit, is written as not valid. */
  void put(double value, int[] into, int at) {
    long raw = Math.round(value * scale);
    boolean valid = !Double.isNaN(value) && raw >= min && raw <= max;
    long bits = valid ? raw : notValid();
    if (words == 2) {
      into[at] = (int) (bits >> 16) & 0xFFFF;
      into[at + 1] = (int) bits & 0xFFFF;
    } else {
      into[at] = (int) bits & 0xFFFF;
    }
  }

  /** Reads a number back; NaN where it is not valid. */
  double get(int high, int low) {
    long bits = words == 2 ? ((long) high << 16) | low : high;
    if (this != BITS && bits == (notValid() & (words == 2 ? 0xFFFF_FFFFL : 0xFFFFL))) {
      return Double.NaN;
    }
    return (min < 0 ? signed(bits) : bits) / scale;
  }

  private long notValid() {
    return min < 0 ? min - 1 : max + 1;
  }

  private long signed(long bits) {
    return words == 2 ? (int) bits : (short) bits;
  }
}
