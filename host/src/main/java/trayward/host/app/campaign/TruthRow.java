package trayward.host.app.campaign;

/**
 * What the oracle sees of a tenth of a second: the plant's truth, and what the controller says of
 * itself.
 *
 * @param tS plant time, s
 * @param bathC true bath, °C
 * @param plateC true plate, °C
 * @param heatW true heater power, W
 * @param flowShare true flow, share of rated
 * @param setC set temperature as asked for, °C
 * @param state state of the interlock as told, or NO_POWER or STALLED
 * @param heatAsked the heater relay is commanded closed
 * @param firstOut first-out cause as told; empty for none
 */
record TruthRow(
    double tS,
    double bathC,
    double plateC,
    double heatW,
    double flowShare,
    double setC,
    String state,
    boolean heatAsked,
    String firstOut) {

  /** Whether the state told is one in which heat may be commanded. */
  boolean purged() {
    return state.equals("READY") || state.equals("HEATING") || state.equals("HOLDING");
  }

  /** Whether the state told is one between a start and the end of heat. */
  boolean inRun() {
    return state.equals("PROVING") || state.equals("PURGING") || purged();
  }

  /** Whether the program runs. */
  boolean alive() {
    return !state.equals("NO_POWER") && !state.equals("STALLED");
  }
}
