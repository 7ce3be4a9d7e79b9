package trayward.host.app.campaign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Draws a session from its seed: a state of the interlock is reached, then the faults begin, then
 * the person reacts. Mutable; one thread; used once.
 */
final class SessionDice {

  /** Of the sessions whose lockout has nothing more to come, this share is watched to its end. */
  private static final double WHOLE = 0.1;

  /**
   * In this share of the sessions the regulator learns its tray, at five times the cost; in the
   * others it is the plain one. The interlock must hold whichever asks for heat.
   */
  private static final double LEARNS = 0.25;

  private static final List<Reached> STATES = List.of(Reached.values());

  private final long seed;
  private final Dice dice;
  private final FaultDice faultDice;
  private final List<SessionPlan.Act> acts = new ArrayList<>();
  private final List<FaultPlan> faults = new ArrayList<>();

  private SessionDice(long seed) {
    this.seed = seed;
    this.dice = new Dice(seed);
    this.faultDice = new FaultDice(dice);
  }

  /** The session of a seed. */
  static SessionPlan of(long seed) {
    return new SessionDice(seed).draw();
  }

  private SessionPlan draw() {
    List<FaultKind> kinds = faultDice.kinds();
    boolean plate = fitted(kinds, Part.PLATE_PROBE, 0.65);
    boolean second = fitted(kinds, Part.SECOND_PROBE, 0.4);
    Reached reached = dice.of(STATES);
    double airC = dice.tenths(10, 30);
    double setC = dice.tenths(reached == Reached.AFTER_RUN ? 34 : 28, 50);
    double startC = startC(reached, setC, airC);
    String tray = new TrayDice(dice, plate, second).tables(setC, airC, startC);
    double beginS = new StoryDice(dice, acts, setC).lead(reached);
    if (reached == Reached.LOCKOUT) {
      FaultPlan provoking = faultDice.provoking(kinds, beginS);
      faults.add(provoking);
      beginS = Math.round((beginS + dice.tenths(2, 60)) * 10) / 10.0;
    }
    for (int i = 0; i < kinds.size(); i++) {
      faults.add(faultDice.plan(kinds.get(i), i == 0 ? beginS : near(beginS)));
    }
    new StoryDice(dice, acts, setC).react(reached, beginS, kinds);
    acts.sort(Comparator.comparingDouble(SessionPlan.Act::atS));
    faults.sort(Comparator.comparingDouble(FaultPlan::atS));
    return plan(reached, tray, plate, second, kinds);
  }

  private SessionPlan plan(
      Reached reached, String tray, boolean plate, boolean second, List<FaultKind> kinds) {
    boolean slow = kinds.stream().anyMatch(k -> slow(k.need()));
    double tail = slow || kinds.isEmpty() ? dice.tenths(1200, 2400) : dice.tenths(200, 500);
    boolean whole = dice.chance(WHOLE);
    String regulator = dice.chance(LEARNS) ? "auto" : "pid";
    SessionPlan plan =
        new SessionPlan(
            seed,
            reached,
            0,
            tray + "regulator = \"" + regulator + "\"\n", // its last table is [control]
            plate,
            second,
            List.copyOf(faults),
            List.copyOf(acts),
            whole);
    return plan.lasting(Math.ceil(plan.lastEntryS() + tail));
  }

  /** Whether what is slow in the tray decides when the fault is found. */
  private static boolean slow(Need need) {
    return switch (need) {
      case PURGED, HEAT, NEVER, APART -> true;
      case STALLED, OUT_OF_OFF, AIR, PROVING, PURGE -> false;
    };
  }

  private boolean fitted(List<FaultKind> kinds, Part part, double share) {
    boolean broken = kinds.stream().anyMatch(k -> k.part() == part);
    return dice.chance(broken ? 0.85 : share);
  }

  /** The second fault at the same moment, soon after, or before the state is reached. */
  private double near(double beginS) {
    double apart = dice.chance(0.3) ? 0 : dice.tenths(0, 60) * (dice.chance(0.6) ? 1 : -1);
    return Math.max(0.5, Math.round((beginS + apart) * 10) / 10.0);
  }

  /** A start that leads to the state soon: near the set temperature where heat is to be held. */
  private double startC(Reached reached, double setC, double airC) {
    double near = setC - dice.tenths(0.6, 1.5);
    return switch (reached) {
      case OFF, PROVING, PURGING -> dice.chance(0.5) ? airC : near;
      case READY -> setC + dice.tenths(2, 4.5);
      case HEATING -> dice.chance(0.5) ? airC : Math.max(airC, setC - dice.tenths(5, 15));
      case HOLDING, AFTER_RUN, LOCKOUT -> near;
    };
  }
}
