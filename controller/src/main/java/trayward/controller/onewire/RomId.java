package trayward.controller.onewire;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What tells one probe on a 1-Wire bus from all others: the family, and a serial number. Immutable.
 *
 * <p>The chip keeps it as eight bytes in read-only memory and sends them in this order: family,
 * serial with its lowest byte first, CRC-8 of these seven. The kernel names a probe's folder by
 * family and serial, the serial's highest byte first, and leaves the CRC out.
 *
 * @param family kind of chip, 0 to 255
 * @param serial 48 bits
 */
public record RomId(int family, long serial) {

  /** Family of the digital thermometers that are read here. */
  public static final int THERMOMETER = 0x28;

  private static final Pattern FOLDER = Pattern.compile("[0-9a-fA-F]{2}-[0-9a-fA-F]{12}");
  private static final Pattern WHOLE = Pattern.compile("[0-9a-fA-F]{16}");
  private static final int BYTES = 8;

  /** Keeps what the chip can hold. */
  public RomId {
    if ((family & ~0xff) != 0 || serial >>> 48 != 0) {
      throw new IllegalArgumentException(family + " " + serial);
    }
  }

  /** What a person's text is. */
  public sealed interface Typed {
    /** A ROM; where it came with its check sum, that is right. */
    record Rom(RomId id) implements Typed {}

    /** Sixteen digits with a check sum that is not theirs: a slip. */
    record WrongCheckSum(int typed, int computed) implements Typed {
      /** Both, in words. */
      public String words() {
        return String.format(Locale.ROOT, "check sum %02x, computed %02x", typed, computed);
      }
    }

    /** Something else. */
    record NoRom() implements Typed {}
  }

  /** The probe of a folder's name, such as {@code 28-0316a10264ff}. */
  public static Optional<RomId> ofFolder(String name) {
    return FOLDER.matcher(name).matches()
        ? Optional.of(
            new RomId(
                Integer.parseInt(name.substring(0, 2), 16), Long.parseLong(name.substring(3), 16)))
        : Optional.empty();
  }

  /**
   * The probe of what a person types: a folder's name, or all sixteen hexadecimal digits with the
   * check sum, either in the order of the wire (family first) or as one number (family last). The
   * check sum tells the two orders apart.
   */
  public static Typed typed(String text) {
    Optional<RomId> folder = ofFolder(text);
    if (folder.isPresent()) {
      return new Typed.Rom(folder.get());
    }
    if (!WHOLE.matcher(text).matches()) {
      return new Typed.NoRom();
    }
    int[] wire = new int[BYTES];
    for (int i = 0; i < BYTES; i++) {
      wire[i] = Integer.parseInt(text.substring(2 * i, 2 * i + 2), 16);
    }
    int[] number = new int[BYTES];
    for (int i = 0; i < BYTES; i++) {
      number[i] = wire[BYTES - 1 - i];
    }
    if (sound(wire)) {
      return new Typed.Rom(ofWire(wire));
    }
    if (sound(number)) {
      return new Typed.Rom(ofWire(number));
    }
    int[] meant = wire[0] != THERMOMETER && number[0] == THERMOMETER ? number : wire;
    return new Typed.WrongCheckSum(meant[BYTES - 1], Crc8.of(meant, BYTES - 1));
  }

  private static boolean sound(int[] wire) {
    return Crc8.of(wire, BYTES - 1) == wire[BYTES - 1];
  }

  private static RomId ofWire(int[] wire) {
    long serial = 0;
    for (int i = BYTES - 2; i > 0; i--) {
      serial = serial << 8 | wire[i];
    }
    return new RomId(wire[0], serial);
  }

  private int[] wire() {
    int[] bytes = new int[BYTES];
    bytes[0] = family;
    for (int i = 1; i < BYTES - 1; i++) {
      bytes[i] = (int) (serial >> (8 * (i - 1))) & 0xff;
    }
    return bytes;
  }

  /** Its check sum, 0 to 255. */
  public int crc() {
    return Crc8.of(wire(), BYTES - 1);
  }

  /** The kernel's name for its folder, in small letters. */
  public String folder() {
    return String.format(Locale.ROOT, "%02x-%012x", family, serial);
  }

  /** All sixteen digits in the order of the wire, check sum last. */
  public String whole() {
    StringBuilder digits = new StringBuilder(2 * BYTES);
    int[] bytes = wire();
    bytes[BYTES - 1] = crc();
    for (int each : bytes) {
      digits.append(String.format(Locale.ROOT, "%02x", each));
    }
    return digits.toString();
  }
}
