package trayward.host.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import trayward.controller.sim.SimFault;

/**
 * Draws a printer's week from a seed: sessions, sheets with their marks, pours, faults that mend,
 * power cuts, and when the host is restarted. Mutable while it draws; one thread.
 */
final class SoakWeekPlan {

  static final int DAY_S = 86_400;
  static final int DAYS = 7;

  /**
   * Water that a litre's tray at 40 °C gives off, L/h: 45 W (the reference tray) over 2.4 MJ/kg.
   */
  private static final double EVAPORATES_L_PER_H = 45 * 3600 / 2.4e6;

  /** Faults beside those of the tray. */
  private static final List<String> OF_COMPUTERS = List.of("host-lost", "scan-stall");

  /** From a start to heat at the most: look, proving, purge with its contact test, s. */
  private static final double PURGED_S = 150;

  /** A time in which heat may be. */
  record Session(double fromS, double toS) {}

  /** The host is away from then on, closed in order or not. */
  record HostAway(double fromS, double toS, boolean inOrder) {}

  private final Random random;
  private final StringBuilder toml = new StringBuilder();
  private final List<Session> sessions = new ArrayList<>();
  private final List<HostAway> away = new ArrayList<>();
  private final List<Double> starts = new ArrayList<>();

  SoakWeekPlan(long seed) {
    random = new Random(seed);
    toml.append("seed = " + seed + "\nduration_s = " + DAYS * DAY_S + "\n");
    toml.append("[second_bath_probe]\npresent = true\n");
    for (int day = 0; day < DAYS; day++) {
      double fromS = day * DAY_S + between(9, 11) * 3600;
      session(fromS, fromS + between(2, 4) * 3600);
      if (random.nextDouble() < 0.7) {
        double eveningS = day * DAY_S + between(17, 18.5) * 3600;
        session(eveningS, eveningS + between(2, 4.5) * 3600);
      }
      if (random.nextDouble() < 0.4) {
        cut(day * DAY_S + 23.3 * 3600, between(600, 4 * 3600)); // switched off at night
      }
    }
    starts.sort(Double::compare);
  }

  String toml() {
    return toml.toString();
  }

  List<Session> sessions() {
    return sessions;
  }

  List<HostAway> away() {
    return away;
  }

  /** When a person asks for a start, in order. */
  List<Double> starts() {
    return starts;
  }

  private void session(double fromS, double toS) {
    sessions.add(new Session(fromS, toS));
    at(fromS, "uncover", "");
    at(fromS + 1, "confirm-level", "");
    set(fromS + 2, between(34, 44));
    again(fromS + 5);
    prints(fromS + 1500, toS - 200);
    for (double s = fromS + between(1500, 2400); s < toS - 300; s += between(1800, 3000)) {
      at(s, "pour", String.format(Locale.ROOT, "litres = %.3f\n", 0.66 * EVAPORATES_L_PER_H));
    }
    for (double s = fromS + between(800, 2000); s < toS - 1500; s += between(900, 1800)) {
      trouble(s);
    }
    set(between(fromS, toS), between(34, 44));
    hostAway(between(fromS, toS - 200));
    hostAway(toS - between(0, 190));
    at(toS, "stop", "");
    at(toS + 600, "cover", "");
  }

  private void prints(double fromS, double toS) {
    for (double s = fromS; s < toS - 200; s += between(240, 500)) {
      at(s, "sheet", "heat_capacity_j_per_k = 210\ntemp_c = 15\n");
      at(s, "mark", "kind = \"in\"\n");
      at(s + between(20, 80), "mark", "kind = \"emergence\"\n");
      at(s + between(90, 190), "mark", "kind = \"pull\"\n");
    }
  }

  /** A fault, or a power cut, or one in the lockout of the other; then the person reacts. */
  private void trouble(double atS) {
    double what = random.nextDouble();
    if (what < 0.25) {
      cut(atS, magnitudes(1, 900));
      again(atS + 905);
      return;
    }
    double lastsS = magnitudes(1, 300);
    fault(atS, lastsS);
    if (what < 0.6) {
      cut(atS + lastsS + between(1, 30), magnitudes(1, 60));
    }
    again(atS + lastsS + 95);
    again(atS + lastsS + 100 + PURGED_S);
  }

  private void fault(double atS, double lastsS) {
    List<SimFault> kinds = List.of(SimFault.values());
    int drawn = random.nextInt(kinds.size() - 1 + OF_COMPUTERS.size()); // the last is a power cut
    String kind =
        drawn < kinds.size() - 1
            ? kinds.get(drawn).words()
            : OF_COMPUTERS.get(drawn - kinds.size() + 1);
    toml.append("[[fault]]\nkind = \"" + kind + "\"\n");
    number("t_s", atS);
    switch (kind) {
      case "scan-stall" -> number("seconds", Math.min(lastsS, 60));
      case "fan-slows" -> number("rpm", between(0, 1400));
      case "probe-offset", "second-probe-offset", "plate-probe-offset" ->
          number("kelvin", between(-10, 10));
      default -> {}
    }
    if (!kind.equals("scan-stall")) {
      number("duration_s", lastsS);
    }
  }

  private void cut(double atS, double lastsS) {
    toml.append("[[fault]]\nkind = \"power-loss\"\n");
    number("t_s", atS);
    number("duration_s", lastsS);
  }

  private void hostAway(double atS) {
    away.add(new HostAway(atS, atS + between(2, 120), random.nextBoolean()));
  }

  /** Acknowledges, resets and starts. */
  private void again(double atS) {
    at(atS, "acknowledge", "");
    at(atS + 1, "reset", "");
    at(atS + 2, "start", "");
    starts.add(tenth(atS + 2));
  }

  private void set(double atS, double celsius) {
    at(atS, "set-temperature", String.format(Locale.ROOT, "celsius = %.1f\n", celsius));
  }

  private void at(double atS, String word, String more) {
    toml.append("[[at]]\ndo = \"" + word + "\"\n" + more);
    number("t_s", atS);
  }

  private void number(String key, double value) {
    toml.append(String.format(Locale.ROOT, "%s = %.1f%n", key, value));
  }

  private static double tenth(double value) {
    return Math.round(value * 10) / 10.0;
  }

  private double between(double least, double most) {
    return least + (most - least) * random.nextDouble();
  }

  /** As often between 1 and 10 as between 10 and 100. */
  private double magnitudes(double least, double most) {
    return least * Math.pow(most / least, random.nextDouble());
  }
}
