package trayward.controller.transmitter;

import trayward.controller.sense.Pt100;
import trayward.controller.sense.Thermistor;

/** What a transmitter's number means once it is scaled. Immutable. */
public sealed interface Reports {

  /** The temperature of a scaled number, °C; NaN where it can be none. */
  double celsius(double scaled);

  /** Degrees Celsius: the transmitter knows its sensor. */
  record Celsius() implements Reports {
    @Override
    public double celsius(double scaled) {
      return scaled;
    }
  }

  /** The resistance of a Pt100, Ω. */
  record Pt100Ohm() implements Reports {
    @Override
    public double celsius(double scaled) {
      return Pt100.celsius(scaled);
    }
  }

  /**
   * The resistance of a thermistor, Ω.
   *
   * @param thermistor its equation
   */
  record ThermistorOhm(Thermistor thermistor) implements Reports {
    @Override
    public double celsius(double scaled) {
      return thermistor.celsius(scaled);
    }
  }
}
