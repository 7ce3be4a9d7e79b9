package trayward.host.app.campaign;

import java.util.List;

/** Draws what the person does: first to reach a state, then after the faults have begun. */
final class StoryDice {

  /** From a start to the end of the shortest purge: look, spin-up, proving and a minute, s. */
  private static final double PURGED_S = 76;

  private static final double MOST_C = 50;

  private final Dice dice;
  private final List<SessionPlan.Act> acts;
  private final double setC;

  StoryDice(Dice dice, List<SessionPlan.Act> acts, double setC) {
    this.dice = dice;
    this.acts = acts;
    this.setC = setC;
  }

  /** The way to a state; answers when the fault is to begin there, s. */
  double lead(Reached reached) {
    double startS = dice.tenths(0, 10);
    return switch (reached) {
      case OFF -> dice.tenths(1, 20);
      case PROVING -> started(startS, dice.tenths(0.3, 11));
      case PURGING -> started(startS, dice.tenths(14, 70));
      case READY -> started(startS, PURGED_S + dice.tenths(10, 250));
      case HEATING -> started(startS, PURGED_S + dice.tenths(5, 450));
      case HOLDING -> started(startS, PURGED_S + dice.tenths(60, 600));
      case AFTER_RUN -> {
        double stopS = started(startS, PURGED_S + dice.tenths(40, 180));
        act(stopS, "stop");
        yield round(stopS + dice.tenths(2, 90));
      }
      case LOCKOUT -> started(startS, PURGED_S + dice.tenths(5, 90));
    };
  }

  private double started(double startS, double laterS) {
    act(startS, "start");
    return round(startS + laterS);
  }

  /** What the person does after {@code faultS}. */
  void react(Reached reached, double faultS, List<FaultKind> kinds) {
    boolean healthy = kinds.isEmpty();
    switch (reached) {
      case OFF -> act(faultS + dice.tenths(1, 30), "start");
      case AFTER_RUN -> act(faultS + dice.tenths(3, 60), "start");
      case READY ->
          act(
              faultS + dice.tenths(5, 60),
              "set-temperature",
              "celsius = " + Math.min(MOST_C, round(setC + dice.tenths(1, 8))) + "\n");
      case LOCKOUT -> again(faultS + dice.tenths(6, 60));
      case PROVING, PURGING -> {
        // A proof that sticks shows only after the fan was off: stopped before heat it soon is.
        if (kinds.stream().anyMatch(k -> k.need() == Need.PROVING)) {
          act(faultS + dice.tenths(0.5, 4), "stop");
          act(faultS + dice.tenths(8, 40), "start");
        }
      }
      case HEATING, HOLDING -> {}
    }
    if (healthy) {
      work(faultS);
      return;
    }
    if (dice.chance(0.35)) {
      again(faultS + dice.tenths(20, 400));
      if (dice.chance(0.5)) {
        again(faultS + dice.tenths(420, 800));
      }
    }
    if (dice.chance(0.2)) {
      stopAndStart(faultS + dice.tenths(0, 200));
    }
    if (dice.chance(0.15)) {
      sheet(faultS + dice.tenths(0, 300));
    }
  }

  /** A stubborn person: acknowledges, resets and starts again, fault or no fault. */
  private void again(double atS) {
    double at = atS;
    for (String word : List.of("acknowledge", "reset", "start")) {
      act(at, word);
      at += dice.tenths(0.5, 8);
    }
  }

  private void stopAndStart(double atS) {
    act(atS, "stop");
    if (dice.chance(0.7)) {
      act(atS + dice.tenths(5, 120), "start");
    }
  }

  private void sheet(double atS) {
    act(atS, "sheet", "heat_capacity_j_per_k = 210\ntemp_c = 15\n");
  }

  /** Healthy work: sheets, cold pours, a cover, a new set temperature, a pause. */
  private void work(double fromS) {
    for (int i = 0; i < 4; i++) {
      double at = fromS + 300 * i + dice.tenths(10, 290);
      double what = dice.between(0, 5);
      if (what < 1) {
        act(at, "pour", "litres = 0.2\ntemp_c = 20\n");
      } else if (what < 2) {
        sheet(at);
      } else if (what < 3) {
        act(at, dice.chance(0.5) ? "cover" : "uncover");
      } else if (what < 4) {
        act(at, "set-temperature", "celsius = " + dice.tenths(25, MOST_C) + "\n");
      } else {
        stopAndStart(at);
      }
    }
  }

  private void act(double atS, String word) {
    act(atS, word, "");
  }

  private void act(double atS, String word, String more) {
    acts.add(new SessionPlan.Act(round(atS), word, more));
  }

  private static double round(double value) {
    return Math.round(value * 10) / 10.0;
  }
}
