package trayward.host.heat;

/**
 * A tray on a heated plate, as two lumps in a room; the bath well mixed, its level kept.
 *
 * <pre>
 *   Cp dTp/dt = P - UA (Tp - Tb) - Lp (Tp - Ta)
 *   Cb dTb/dt = UA (Tp - Tb) - Lb (Tb - Ta) - Qev(Tb)
 * </pre>
 *
 * <p>A real tray is slower and less even. This is separate from the simulated plant on purpose: a
 * planner that shared its code could not be checked by it. Immutable; safe on any thread.
 *
 * @param litres liquid, L, above 0
 * @param watts heater, W, above 0
 * @param plateJPerK heat capacity of the plate, J/K, above 0
 * @param plateToBathWPerK contact of plate and bath, W/K, above 0
 * @param bathLossWPerK dry heat of surface, walls and base for each kelvin above the room, W/K
 * @param plateLossWPerK what the plate loses to the room, W/K
 * @param plateLimitC temperature the plate must not pass, °C
 * @param vapour what evaporates, and the room
 */
public record HeatedTray(
    double litres,
    double watts,
    double plateJPerK,
    double plateToBathWPerK,
    double bathLossWPerK,
    double plateLossWPerK,
    double plateLimitC,
    PoolEvaporation vapour) {

  /** Heat capacity of a litre of dilute developer, J/K. */
  public static final double LITRE_J_PER_K = 4180;

  /** Area and dry loss of the tray the usual values are taken from, m² and W/K. */
  private static final double USUAL_M2 = 0.072;

  private static final double USUAL_W_PER_K = 2.5;

  /** Refuses what is out of range. */
  public HeatedTray {
    if (!(litres > 0)
        || !(watts > 0)
        || !(plateJPerK > 0)
        || !(plateToBathWPerK > 0)
        || !(bathLossWPerK >= 0)
        || !(plateLossWPerK >= 0)
        || Double.isNaN(plateLimitC)) {
      throw new IllegalArgumentException("no heated tray: " + litres + " L, " + watts + " W");
    }
  }

  /**
   * Dry loss of a tray nobody has measured, W/K: that of the reference tray, in proportion to the
   * surface. Surface, walls 6 cm high and base make it up by {@link FreeSurface}, to 15 %.
   */
  public static double usualBathLossWPerK(double areaM2) {
    return USUAL_W_PER_K * areaM2 / USUAL_M2;
  }

  /**
   * Where plate and bath are.
   *
   * @param plateC plate, °C
   * @param bathC bath, °C
   */
  public record At(double plateC, double bathC) {

    private At moved(At rate, double seconds) {
      return new At(plateC + rate.plateC * seconds, bathC + rate.bathC * seconds);
    }
  }

  /** The same tray with another amount of liquid. */
  public HeatedTray holding(double otherLitres) {
    return with(otherLitres, watts, vapour);
  }

  /** The same tray with another heater. */
  public HeatedTray heatedBy(double otherWatts) {
    return with(litres, otherWatts, vapour);
  }

  /** The same tray under a cover: nothing evaporates, dry heat goes as before. */
  public HeatedTray covered() {
    return with(litres, watts, vapour.covered());
  }

  private HeatedTray with(double l, double w, PoolEvaporation v) {
    return new HeatedTray(
        l, w, plateJPerK, plateToBathWPerK, bathLossWPerK, plateLossWPerK, plateLimitC, v);
  }

  /** Heat capacity of the bath, J/K. */
  public double bathJPerK() {
    return LITRE_J_PER_K * litres;
  }

  /** Dry heat the bath loses, W. */
  public double dryW(double bathC) {
    return bathLossWPerK * (bathC - vapour.roomC());
  }

  /** All heat the bath loses, W. */
  public double bathLossW(double bathC) {
    return dryW(bathC) + vapour.wattsAt(bathC);
  }

  /** Where it stands when the bath is held at a temperature. */
  public At heldAt(double bathC) {
    return new At(bathC + bathLossW(bathC) / plateToBathWPerK, bathC);
  }

  /** Heat that the plate loses to the room, W. */
  public double plateLossW(double plateC) {
    return plateLossWPerK * (plateC - vapour.roomC());
  }

  /** Heat that holds the bath at a temperature, W. */
  public double holdW(double bathC) {
    return bathLossW(bathC) + plateLossW(heldAt(bathC).plateC());
  }

  /** After so many seconds of full heat, or as much as the plate's limit allows: Runge-Kutta. */
  At heated(At from, double seconds) {
    At next = stepped(from, watts, seconds);
    if (next.plateC() <= plateLimitC) {
      return next;
    }
    At held = new At(Math.max(plateLimitC, from.plateC()), from.bathC());
    double keepsW = plateToBathWPerK * (held.plateC() - held.bathC()) + plateLossW(held.plateC());
    At bath = stepped(held, Math.max(0, Math.min(watts, keepsW)), seconds);
    return new At(Math.min(bath.plateC(), held.plateC()), bath.bathC());
  }

  /** After so many seconds without heat. */
  At coasted(At from, double seconds) {
    return stepped(from, 0, seconds);
  }

  private At stepped(At from, double heatW, double seconds) {
    At one = rate(from, heatW);
    At two = rate(from.moved(one, seconds / 2), heatW);
    At three = rate(from.moved(two, seconds / 2), heatW);
    At four = rate(from.moved(three, seconds), heatW);
    return from.moved(one, seconds / 6)
        .moved(two, seconds / 3)
        .moved(three, seconds / 3)
        .moved(four, seconds / 6);
  }

  private At rate(At at, double heatW) {
    double toBath = plateToBathWPerK * (at.plateC() - at.bathC());
    return new At(
        (heatW - toBath - plateLossW(at.plateC())) / plateJPerK,
        (toBath - bathLossW(at.bathC())) / bathJPerK());
  }
}
