package trayward.controller.app;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import trayward.controller.modbus.SerialSettings;
import trayward.controller.port.ProbeRole;
import trayward.controller.quantity.Range;
import trayward.controller.sense.Thermistor;
import trayward.controller.transmitter.Channel;
import trayward.controller.transmitter.RegisterType;
import trayward.controller.transmitter.Reports;

/**
 * The {@code [transmitter]} table: a serial line and what is on it. Immutable.
 *
 * @param serial the line
 * @param channels where each probe is on the line
 */
public record TransmitterTable(SerialSettings serial, Map<ProbeRole, Channel> channels) {

  /** Speeds of transmitters: from the slowest on long lines to the fastest that adapters keep. */
  private static final int LEAST_BAUD = 1200;

  private static final int MOST_BAUD = 115_200;

  /** Scales and offsets beyond this are a slip. */
  private static final double MOST = 1e6;

  /**
   * Largest step of a reading, K: that of a 1-Wire probe, with which the watches were made. In
   * simulated sessions with steps of 0.1 K some healthy trays tripped as frozen.
   */
  private static final double MOST_STEP_K = 0.0625;

  static TransmitterTable read(Section line, Map<ProbeRole, Channel> channels)
      throws ConfigRefused {
    if (!line.has("serial_port")) {
      throw line.refuse("serial_port", "nothing", "the path of a serial device");
    }
    return new TransmitterTable(
        new SerialSettings(
            line.text("serial_port"),
            line.whole("baud", 9600, LEAST_BAUD, MOST_BAUD),
            LinkTable.parity(line),
            line.whole("stop_bits", 1, 1, 2)),
        Map.copyOf(channels));
  }

  /** One probe's table, such as {@code [transmitter.bath]}. */
  static Channel channel(Section line, String key) throws ConfigRefused {
    Section table = line.table(key);
    if (!table.present()) {
      throw line.refuse(key, "nothing", "a table with unit, register, type and what it reports");
    }
    Channel channel =
        new Channel(
            table.whole("unit", 1, 1, 247),
            table.whole("function", 4, 3, 4),
            table.whole("register", 0, 0, 65_534),
            RegisterType.of(table.oneOf("type", "int16", ProbeTable.types())),
            table
                .oneOf("word_order", "high-first", List.of("high-first", "low-first"))
                .equals("low-first"),
            scale(table),
            table.number("offset", 0, new Range(-MOST, MOST, "")),
            reports(table),
            fault(table));
    table.done();
    refuseCoarse(table, channel);
    return channel;
  }

  /**
   * A reading in coarse steps stands still for minutes in a bath that warms, and so cannot be told
   * from a frozen one (SR-08).
   */
  private static void refuseCoarse(Section table, Channel channel) throws ConfigRefused {
    double stepK = channel.reports().kelvin(channel.scale());
    if (channel.type() != RegisterType.FLOAT32 && !(stepK <= MOST_STEP_K)) {
      throw table.refuse(
          "scale",
          Range.plain(channel.scale()),
          "a scale by which one count is at most " + Range.plain(MOST_STEP_K) + " K near 40 °C");
    }
  }

  private static double scale(Section table) throws ConfigRefused {
    double scale = table.number("scale", 1, new Range(-MOST, MOST, ""));
    if (scale == 0) {
      throw table.refuse("scale", "0", "what the register's number is multiplied with, not 0");
    }
    return scale;
  }

  private static OptionalDouble fault(Section table) throws ConfigRefused {
    Range any = new Range(-4_294_967_296.0, 4_294_967_296.0, "as the register's number");
    return table.has("fault_value")
        ? OptionalDouble.of(table.number("fault_value", any))
        : OptionalDouble.empty();
  }

  private static Reports reports(Section table) throws ConfigRefused {
    String word =
        table.oneOf("reports", "celsius", List.of("celsius", "pt100_ohm", "thermistor_ohm"));
    return switch (word) {
      case "pt100_ohm" -> new Reports.Pt100Ohm();
      case "thermistor_ohm" -> new Reports.ThermistorOhm(thermistor(table));
      default -> new Reports.Celsius();
    };
  }

  /** By β, by three coefficients, or by three points of its table; exactly one of them. */
  private static Thermistor thermistor(Section table) throws ConfigRefused {
    boolean coefficients = table.has("steinhart_hart");
    boolean points = table.has("points_c_ohm");
    boolean beta = table.has("beta_k");
    if ((coefficients ? 1 : 0) + (points ? 1 : 0) + (beta ? 1 : 0) != 1) {
      throw table.refuse(
          "reports",
          "'thermistor_ohm'",
          "that with exactly one of beta_k (and r25_ohm), steinhart_hart and points_c_ohm");
    }
    if (beta) {
      return new Thermistor.Beta(
          table.number("r25_ohm", 10_000, new Range(10, 10_000_000, "Ω")),
          table.number("beta_k", new Range(1000, 10_000, "K")));
    }
    Optional<Thermistor.SteinhartHart> found;
    if (coefficients) {
      double[] c = table.numbers("steinhart_hart", 3);
      found =
          Optional.of(new Thermistor.SteinhartHart(c[0], c[1], c[2]))
              .filter(Thermistor.SteinhartHart::falls);
    } else {
      double[] p = table.numbers("points_c_ohm", 6);
      found =
          Thermistor.SteinhartHart.through(
              new Thermistor.Point(p[0], p[1]),
              new Thermistor.Point(p[2], p[3]),
              new Thermistor.Point(p[4], p[5]));
    }
    if (found.isEmpty()) {
      String key = coefficients ? "steinhart_hart" : "points_c_ohm";
      String accepted =
          coefficients
              ? "the coefficients a, b, c of a thermistor that falls as it warms"
              : "°C, Ω, °C, Ω, °C, Ω of three places in a table that falls as it warms";
      throw table.refuse(key, "those numbers", accepted);
    }
    return found.get();
  }
}
