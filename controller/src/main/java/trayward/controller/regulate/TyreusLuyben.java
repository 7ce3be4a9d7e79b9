package trayward.controller.regulate;

/**
 * The tuning rules of Tyreus and Luyben (PI 1992; PID Luyben and Luyben 1997; both read
 * second-hand): from the ultimate point as those of Ziegler and Nichols, but slow and steady, for
 * plants that nearly integrate, as a bath does. Pure.
 */
public final class TyreusLuyben {

  private TyreusLuyben() {}

  /** PI: K = Ku/3.2, Ti = 2.2 Pu. */
  public static IsaPid pi(UltimatePoint u) {
    return IsaPid.pi(u.gain() / 3.2, 2.2 * u.periodS());
  }

  /** PID: K = Ku/2.2, Ti = 2.2 Pu, Td = Pu/6.3. */
  public static IsaPid pid(UltimatePoint u) {
    return IsaPid.pid(u.gain() / 2.2, 2.2 * u.periodS(), u.periodS() / 6.3);
  }
}
