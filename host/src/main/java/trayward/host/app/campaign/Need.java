package trayward.host.app.campaign;

/**
 * From when on a fault can matter, counted in time of rows; detection time begins there, and anew
 * where a run has ended in between. In lockout nothing matters more: heat is off already. Not
 * detected is a fault that could matter for the whole patience and tripped nothing.
 */
enum Need {
  /**
   * The program itself: while it stalls. Lateness is seen in the first scan after a second of it.
   */
  STALLED(1),
  /** A bad frame: from when the interlock has left OFF. Three seconds, stale four, and a second. */
  OUT_OF_OFF(9),
  /** Probes apart: a minute and the lag of the slower. */
  APART(80),
  /** Air: from proving to holding. Thirty seconds for a first proof. */
  AIR(32),
  /** A proof stuck on: while proving, after the fan was off. The look takes fifteen at most. */
  PROVING(17),
  /** The safety relay: a whole contact test in a purge. */
  PURGE(60),
  /** Contacts: while heat is possible; a welded one warms three litres by 5 K in 15 minutes. */
  PURGED(900),
  /** Heat: seconds of commanded heat. 20 kJ are 133 s at 150 W; twice that with what is lost. */
  HEAT(270),
  /** No trip is needed: the design asks for none, or only for heat to be withheld. */
  NEVER(Double.POSITIVE_INFINITY);

  private final double patienceS;

  Need(double patienceS) {
    this.patienceS = patienceS;
  }

  /** How long it may matter without being found, s. */
  double patienceS() {
    return patienceS;
  }

  /** Whether the clock begins anew in this row: nothing can show the fault here. */
  boolean rests(TruthRow row) {
    return switch (this) {
      case STALLED, NEVER -> false;
      case OUT_OF_OFF, APART -> !matters(row) && row.alive();
      case AIR, PROVING, PURGE, PURGED, HEAT -> !row.inRun() && row.alive();
    };
  }

  /** Whether the fault can matter in this row. */
  boolean matters(TruthRow row) {
    return switch (this) {
      case STALLED -> row.state().equals("STALLED");
      case OUT_OF_OFF, APART -> row.inRun() || row.state().equals("AFTER_RUN");
      case AIR -> row.inRun();
      case PROVING -> row.state().equals("PROVING");
      case PURGE -> row.state().equals("PURGING");
      case PURGED -> row.purged();
      case HEAT -> row.heatAsked() && row.purged();
      case NEVER -> false;
    };
  }
}
