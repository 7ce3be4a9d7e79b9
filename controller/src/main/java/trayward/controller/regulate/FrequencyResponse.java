package trayward.controller.regulate;

import org.hipparchus.complex.Complex;

/** What a linear system does to a sine, as a function of its angular frequency. Pure. */
@FunctionalInterface
public interface FrequencyResponse {

  /** The complex gain at {@code radPerS}, rad/s, above 0. */
  Complex at(double radPerS);

  /** This system and {@code other} in series: the loop, where one is plant and one controller. */
  default FrequencyResponse times(FrequencyResponse other) {
    return radPerS -> at(radPerS).multiply(other.at(radPerS));
  }
}
