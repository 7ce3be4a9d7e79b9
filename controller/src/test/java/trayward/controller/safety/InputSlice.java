package trayward.controller.safety;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import trayward.controller.event.TripCause;

/**
 * Inputs of one exploration: every combination of the values that some kinds of input can take,
 * each kind reduced to the classes the interlock tells apart; the other kinds at their healthy
 * value. Proofs of air and requests are always among them.
 */
final class InputSlice {

  /** A kind of input with its classes, the healthy one first. */
  enum Kind {
    BATH,
    SECOND_BATH,
    PLATE,
    LINES,
    STORE,
    HOST,
    LATE,
    FINDINGS,
    CONTACTS,
    WITHHOLDING,
    SET
  }

  private InputSlice() {}

  private static List<Consumer<Conditions>> classes(Kind kind) {
    return switch (kind) {
      case BATH ->
          List.of(
              c -> c.bath = Conditions.read(36),
              c -> c.bath = Conditions.read(25),
              c -> c.bath = Conditions.read(39.8),
              c -> c.bath = Conditions.read(40.6),
              c -> c.bath = Conditions.read(45),
              c -> c.bath = Conditions.read(55),
              c -> c.bath = Conditions.bad(Conditions.read(36)),
              c -> c.bath = Conditions.bad(Conditions.read(Double.NaN)));
      case SECOND_BATH ->
          List.of(
              c -> c.second = Temperature.NOT_FITTED,
              c -> c.second = Conditions.read(36),
              c -> c.second = Conditions.read(40.6),
              c -> c.second = Conditions.read(55),
              c -> c.second = Conditions.bad(Conditions.read(36)),
              c -> c.second = Conditions.bad(Conditions.read(Double.NaN)));
      case PLATE ->
          List.of(
              c -> c.plate = Conditions.read(45),
              c -> c.plate = Conditions.read(72),
              c -> c.plate = Conditions.read(75),
              c -> c.plate = Conditions.bad(Conditions.read(45)),
              c -> c.plate = Conditions.bad(Conditions.read(Double.NaN)),
              c -> c.plate = Temperature.NOT_FITTED);
      case LINES ->
          List.of(
              c -> c.circuit = true,
              c -> c.circuit = false,
              c -> {
                c.circuit = false;
                c.lines = false;
              });
      case STORE -> List.of(c -> c.store = true, c -> c.store = false);
      case HOST -> List.of(c -> c.hostSilentMs = 0, c -> c.hostSilentMs = 60_000);
      case LATE -> List.of(c -> c.lateMs = 0, c -> c.lateMs = 200, c -> c.lateMs = 1000);
      case FINDINGS ->
          List.of(
              c -> c.findings = Set.of(),
              c -> c.findings = Set.of(TripCause.RELAY_STUCK),
              c -> c.findings = Set.of(TripCause.HEAT_NOT_ARRIVING),
              c -> c.findings = Set.of(TripCause.TRAY_DRY),
              c -> c.findings = Set.of(TripCause.BATH_PROBE_BAD, TripCause.PLATE_PROBE_BAD));
      case CONTACTS ->
          List.of(
              c -> c.contactsSound = true,
              c -> c.contactsSound = false,
              c -> contact(c, Relay.HEATER),
              c -> contact(c, Relay.SAFETY));
      case WITHHOLDING ->
          List.of(
              c -> c.level = Level.WELL,
              c -> c.level = Level.LOW,
              c -> c.level = Level.UNSURE,
              c -> c.looking = true,
              c -> c.startUnconfirmed = true);
      case SET -> List.of(c -> c.setC = 40, c -> c.setC = 30);
    };
  }

  private static void contact(Conditions c, Relay relay) {
    c.contactsSound = false;
    c.contactTest = Optional.of(relay);
  }

  /** Both proofs in every combination of what they can say. */
  private static List<Consumer<Conditions>> air() {
    List<Consumer<Conditions>> all = new ArrayList<>();
    for (Proof airflow : List.of(Proof.PRESENT, Proof.ABSENT)) {
      for (Proof tachometer : List.of(Proof.PRESENT, Proof.UNSURE, Proof.ABSENT)) {
        all.add(
            c -> {
              c.airflow = airflow;
              c.tachometer = tachometer;
            });
      }
    }
    return all;
  }

  /** Every set of requests, or those that differ in what they can do together. */
  private static List<Consumer<Conditions>> requests(boolean all) {
    List<Consumer<Conditions>> list = new ArrayList<>();
    for (EnumSet<Request> set : sets(List.of(Request.values()))) {
      boolean telling =
          set.size() <= 1
              || set.equals(EnumSet.of(Request.ACKNOWLEDGE, Request.RESET))
              || set.equals(EnumSet.of(Request.STOP, Request.START))
              || set.size() == Request.values().length;
      if (all || telling) {
        list.add(c -> c.asked.addAll(set));
      }
      if ((all || telling) && set.contains(Request.RESET)) {
        list.add(
            c -> {
              c.asked.addAll(set);
              c.atTray = false;
            });
      }
    }
    return list;
  }

  private static List<EnumSet<Request>> sets(List<Request> from) {
    if (from.isEmpty()) {
      return List.of(EnumSet.noneOf(Request.class));
    }
    List<EnumSet<Request>> all = new ArrayList<>();
    for (EnumSet<Request> rest : sets(from.subList(1, from.size()))) {
      all.add(rest);
      EnumSet<Request> more = EnumSet.copyOf(rest);
      more.add(from.get(0));
      all.add(more);
    }
    return all;
  }

  /** Inputs in which these kinds vary with air and requests. */
  static List<InterlockInputs> of(boolean everyRequest, Kind... kinds) {
    List<List<Consumer<Conditions>>> groups = new ArrayList<>();
    groups.add(air());
    groups.add(requests(everyRequest));
    for (Kind kind : Kind.values()) {
      List<Consumer<Conditions>> classes = classes(kind);
      groups.add(List.of(kinds).contains(kind) ? classes : classes.subList(0, 1));
    }
    List<InterlockInputs> made = new ArrayList<>();
    combine(groups, 0, new ArrayList<>(), made);
    return made;
  }

  private static void combine(
      List<List<Consumer<Conditions>>> groups,
      int at,
      List<Consumer<Conditions>> chosen,
      List<InterlockInputs> made) {
    if (at == groups.size()) {
      Conditions conditions = new Conditions();
      chosen.forEach(change -> change.accept(conditions));
      made.add(conditions.take(false));
      return;
    }
    for (Consumer<Conditions> change : groups.get(at)) {
      chosen.add(change);
      combine(groups, at + 1, chosen, made);
      chosen.remove(chosen.size() - 1);
    }
  }
}
