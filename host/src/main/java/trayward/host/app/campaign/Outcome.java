package trayward.host.app.campaign;

import java.util.List;

/**
 * A session judged.
 *
 * @param plan what it was
 * @param violations what is held against the software
 * @param apart what only independent hardware could have stopped
 * @param faults what became of each tried fault
 * @param trips first-out names in order of time
 * @param bathC hottest true bath, °C
 * @param plateC hottest true plate, °C
 */
record Outcome(
    SessionPlan plan,
    List<Finding> violations,
    List<Finding> apart,
    List<FaultOutcome> faults,
    List<Oracle.NamedTrip> trips,
    double bathC,
    double plateC) {}
