package trayward.controller.transmitter;

import trayward.controller.sense.Pt100;
import trayward.controller.sense.Thermistor;

/** What a transmitter's number means once it is scaled. Immutable. */
public sealed interface Reports {

  /** The temperature of a scaled number, °C; NaN where it can be none. */
  double celsius(double scaled);

  /** Where baths are held, °C. */
  double WORKING_C = 40;

  /**
   * How far apart the temperatures of two numbers are that differ by {@code step}, near 40 °C, K.
   */
  double kelvin(double step);

  /** Degrees Celsius: the transmitter knows its sensor. */
  record Celsius() implements Reports {
    @Override
    public double celsius(double scaled) {
      return scaled;
    }

    @Override
    public double kelvin(double step) {
      return Math.abs(step);
    }
  }

  /** The resistance of a Pt100, Ω. */
  record Pt100Ohm() implements Reports {
    @Override
    public double celsius(double scaled) {
      return Pt100.celsius(scaled);
    }

    @Override
    public double kelvin(double step) {
      return Math.abs(celsius(Pt100.ohm(WORKING_C) + step) - WORKING_C);
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

    @Override
    public double kelvin(double step) {
      return Math.abs(celsius(thermistor.ohm(WORKING_C) + step) - WORKING_C);
    }
  }
}
