package trayward.host.air;

import trayward.host.heat.PoolEvaporation;

/**
 * An upper bound on the formaldehyde that an open bath gives off: all of it taken as free, though
 * sulfite binds most, because nobody at a tray knows how much. It crosses the air above the bath as
 * water vapour does, but more slowly as its molecule is larger: by 2/3 power of the diffusivities,
 * the analogy of Chilton and Colburn. Good to a factor of two. Immutable.
 *
 * @param molPerM3 formaldehyde made up in the bath, mol/m³ or mmol/L, 0 or more
 * @param bathC temperature of the bath, °C
 * @param vapour how the bath evaporates
 */
public record VapourBound(double molPerM3, double bathC, PoolEvaporation vapour) {

  /** Diffusivities of formaldehyde and of water vapour in air, 1e-5 m²/s, from memory. */
  private static final double SLOWNESS = Math.pow(1.6 / 2.55, 2.0 / 3);

  private static final double KELVIN = 273.15;

  /** Refuses what is out of range. */
  public VapourBound {
    if (!(molPerM3 >= 0) || !(bathC >= 0 && bathC <= 100)) {
      throw new IllegalArgumentException("no bath: " + molPerM3 + " mol/m³ at " + bathC + " °C");
    }
  }

  /** Pressure of it right over the bath, Pa. */
  public double pascal() {
    return Henry.STAUDINGER.pascal(molPerM3, bathC);
  }

  /** Share of it in the air right over the bath, ppm. */
  public double surfacePpm() {
    return pascal() / 101_325 * 1e6;
  }

  /** Mass of it in the air right over the bath, mg/m³, at the bath's temperature. */
  public double surfaceMgPerM3() {
    double molPerM3Air = pascal() / (Gas.GAS_CONSTANT * (bathC + KELVIN));
    return molPerM3Air * Gas.FORMALDEHYDE.gramsPerMol() * 1000;
  }

  /** What it gives off at the most, mg/h, into clean air. */
  public double mgPerH() {
    return vapour.carriedM3PerHAt(bathC) * SLOWNESS * surfaceMgPerM3();
  }
}
