package trayward.controller.app;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;

/** A rehearsal that was run, with everything it told. */
final class Played implements Rehearsal.Listener {

  /** An event with its time. */
  record Told(double tS, TrayEvent event) {}

  final List<RehearsalRow> rows = new ArrayList<>();
  final List<Told> events = new ArrayList<>();

  static Played of(String toml) throws ConfigRefused {
    Played played = new Played();
    new Rehearsal(Scenario.parse("s.toml", toml), played).run();
    return played;
  }

  @Override
  public void row(RehearsalRow row) {
    rows.add(row);
  }

  @Override
  public void event(double tS, TrayEvent event) {
    events.add(new Told(tS, event));
  }

  @Override
  public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {}

  /** Rows from one time to another. */
  List<RehearsalRow> between(double fromS, double toS) {
    return rows.stream().filter(r -> r.tS() >= fromS - 1e-9 && r.tS() <= toS + 1e-9).toList();
  }

  /** Time of the first row from {@code fromS} on for which something holds; infinite if none. */
  double first(double fromS, Predicate<RehearsalRow> holds) {
    return rows.stream()
        .filter(r -> r.tS() >= fromS - 1e-9)
        .filter(holds)
        .mapToDouble(RehearsalRow::tS)
        .findFirst()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** Subjects of the events of a kind, in order. */
  List<String> told(EventKind kind) {
    return events.stream()
        .filter(e -> e.event().kind() == kind)
        .map(e -> e.event().subject())
        .toList();
  }

  static boolean heats(RehearsalRow row) {
    // The contact test closes each relay alone: heat needs both.
    return (row.heaterContact() && row.safetyContact()) || row.heatW() > 0;
  }
}
