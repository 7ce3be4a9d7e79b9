package trayward.controller.app;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import trayward.controller.modbus.SerialSettings;
import trayward.controller.quantity.Range;

/**
 * The {@code [link]} table: the line between controller and host, read by both. One of the two, or
 * none. Immutable.
 *
 * @param serial a serial port
 * @param tcpPort a TCP port on loopback
 */
public record LinkTable(Optional<SerialSettings> serial, OptionalInt tcpPort) {

  /** Reads the table. */
  static LinkTable read(Section table) throws ConfigRefused {
    boolean serial = table.has("serial_port");
    if (serial && table.has("tcp_port")) {
      throw table.refuse("tcp_port", "a second line", "either serial_port or tcp_port");
    }
    Optional<SerialSettings> port =
        serial ? Optional.of(serial(table)) : Optional.<SerialSettings>empty();
    OptionalInt tcp =
        table.has("tcp_port")
            ? OptionalInt.of(table.whole("tcp_port", 0, 1, 65_535))
            : OptionalInt.empty();
    table.done();
    return new LinkTable(port, tcp);
  }

  /**
   * A serial port with {@code serial_port}, {@code baud}, {@code parity} and {@code stop_bits}.
   * Without parity the guide asks for two stop bits; with it, one.
   */
  static SerialSettings serial(Section table) throws ConfigRefused {
    String path = table.text("serial_port");
    if (path.isBlank()) {
      throw table.refuse("serial_port", "''", "the path of a serial port, such as /dev/ttyUSB0");
    }
    int baud =
        table.whole(
            "baud",
            SerialSettings.DEFAULT_BAUD,
            (int) SerialSettings.BAUD.min(),
            (int) SerialSettings.BAUD.max());
    SerialSettings.Parity parity = parity(table);
    int stopBits = table.whole("stop_bits", parity == SerialSettings.Parity.NONE ? 2 : 1, 1, 2);
    return new SerialSettings(path, baud, parity, stopBits);
  }

  /** The {@code parity} of a serial line. */
  static SerialSettings.Parity parity(Section table) throws ConfigRefused {
    String word = table.oneOf("parity", "none", List.of("none", "even", "odd"));
    return SerialSettings.Parity.valueOf(word.toUpperCase(Locale.ROOT));
  }

  /** Whether a line is configured at all. */
  public boolean configured() {
    return serial.isPresent() || tcpPort.isPresent();
  }

  /** The line in words. */
  public String words() {
    return serial
        .map(s -> "serial port " + s.path() + " at " + Range.plain(s.baud()) + " baud")
        .orElseGet(
            () ->
                tcpPort.isPresent()
                    ? "TCP port " + tcpPort.getAsInt() + " on loopback"
                    : "no line");
  }
}
