package trayward.host.app.campaign;

/** What the oracle holds against a session. */
enum Hazard {
  /** Heat in air that does not move, longer than a second after the flow fell (SR-05). */
  STILL_AIR("heat in still air"),
  /** The true bath above the hard limit and a kelvin (SR-06). */
  BATH_HOT("bath above 56 °C"),
  /** The true plate above its limit and three kelvin (SR-07). */
  PLATE_HOT("plate above 78 °C"),
  /** Heat later than a second after a stop, and no new start (SR-14). */
  AFTER_STOP("heat after stop"),
  /** Heat that nobody started: at power-up, after a trip, after a power loss (SR-12, SR-13). */
  BY_ITSELF("heat that nobody started"),
  /** Heat longer than a second in a state that never heats. */
  WRONG_STATE("heat in a state that never heats"),
  /** Heat longer than two seconds after the program stalled (SR-18). */
  FROZEN_PROGRAM("heat under a stalled program"),
  /** The first name of a lockout is none that the design lets explain the truth. */
  MISNAMED("misnamed trip"),
  /** Such a name where no sensor that is wired could have told the truth from it. */
  UNTOLD("name that no sensor could tell"),
  /** A trip although nothing is broken. */
  HEALTHY_TRIP("trip without a fault");

  private final String words;

  Hazard(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }
}
