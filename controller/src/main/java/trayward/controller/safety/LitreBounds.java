package trayward.controller.safety;

/**
 * Litres that a heating rate allows. Immutable.
 *
 * @param bestL best estimate, L
 * @param lowL least, L
 * @param highL most, L
 */
record LitreBounds(double bestL, double lowL, double highL) {

  /** The same, a share wider at both ends. */
  LitreBounds wider(double share) {
    return new LitreBounds(bestL, lowL * (1 - share), highL * (1 + share));
  }
}
