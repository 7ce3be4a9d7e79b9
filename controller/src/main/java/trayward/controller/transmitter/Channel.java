package trayward.controller.transmitter;

import java.util.OptionalDouble;
import trayward.controller.port.RawReading;
import trayward.controller.port.RawReading.Kind;

/**
 * Where one probe's number is on the line, and what it means. Immutable; {@link #reading} is pure.
 *
 * @param unit the transmitter's address on the line, 1 to 247
 * @param function 3 for holding registers, 4 for input registers
 * @param register address of the first register, from 0 as on the wire
 * @param type how the number lies in its registers
 * @param lowWordFirst whether the first of two registers is the lower half
 * @param scale what the number is multiplied with
 * @param offset what is then added, in the unit of {@code reports}
 * @param reports what the scaled number means
 * @param faultValue the number, before it is scaled, that says the sensor is broken or not there
 */
public record Channel(
    int unit,
    int function,
    int register,
    RegisterType type,
    boolean lowWordFirst,
    double scale,
    double offset,
    Reports reports,
    OptionalDouble faultValue) {

  /** What tells this probe from others, for its calibration: unit, function, register. */
  public String name() {
    return "transmitter-" + unit + "-" + function + "-" + register;
  }

  /**
   * What an answer of the line says of the probe.
   *
   * <p>A sensor that the transmitter declares broken is an absent probe, as is a number that is no
   * number. Zero is no fault here: a register may well hold 0.0 °C. What no sensor can have, such
   * as a short, comes out as NaN and is out of range.
   *
   * @param answer what came
   * @param takenNanos when it was asked
   */
  RawReading reading(Answer answer, long takenNanos) {
    if (answer instanceof Answer.CheckSumWrong) {
      return RawReading.failed(Kind.CRC_ERROR, takenNanos);
    }
    if (!(answer instanceof Answer.Registers came) || came.values().length != type.words()) {
      return RawReading.failed(Kind.ABSENT, takenNanos);
    }
    double number = type.number(came.values(), lowWordFirst);
    boolean broken = faultValue.isPresent() && number == faultValue.getAsDouble();
    if (broken || !Double.isFinite(number)) {
      return RawReading.failed(Kind.ABSENT, takenNanos);
    }
    return RawReading.transmitted(reports.celsius(number * scale + offset), takenNanos);
  }
}
