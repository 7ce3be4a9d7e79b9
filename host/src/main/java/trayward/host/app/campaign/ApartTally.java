package trayward.host.app.campaign;

/** Counts over the sessions that one rule of blinding sets apart. Mutable; one thread. */
final class ApartTally {

  int sessions;
  int findings;
  long firstSeed = -1;
  double bathC = Double.NEGATIVE_INFINITY;
  double plateC = Double.NEGATIVE_INFINITY;

  void add(Outcome session, Blinding rule) {
    sessions++;
    bathC = Math.max(bathC, session.bathC());
    plateC = Math.max(plateC, session.plateC());
    boolean found =
        session.apart().stream()
            .anyMatch(f -> Blinding.apart(session.plan()).get(f.hazard()) == rule);
    findings += found ? 1 : 0;
    if (found && firstSeed < 0) {
      firstSeed = session.plan().seed();
    }
  }
}
