package trayward.host.app.campaign;

import trayward.controller.event.TripCause;

/**
 * A cause that a fault may explain, after the column "truths it may explain" of the design.
 *
 * @param cause the trip's name
 * @param when under which circumstance
 * @param reason why that name tells the person the truth
 */
record Explains(TripCause cause, When when, String reason) {

  static Explains always(TripCause cause, String reason) {
    return new Explains(cause, When.ALWAYS, reason);
  }
}
