package trayward.controller.safety;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;

/** What the next scans of a {@link Bench} will find; healthy as made. Mutable. */
final class Conditions {

  /** Null where the proof follows the fan's command. */
  @Nullable Proof airflow;

  @Nullable Proof tachometer;
  Temperature bath = read(20);
  Temperature second = Temperature.NOT_FITTED;
  Temperature plate = read(20);
  double setC = Bench.SET_C;
  boolean circuit = true;
  boolean lines = true;
  boolean atTray = true;
  boolean store = true;
  int hostSilentMs;
  Optional<Relay> contactTest = Optional.empty();
  boolean contactsSound = true;
  boolean looking;
  Level level = Level.WELL;
  boolean startUnconfirmed;
  Set<TripCause> findings = Set.of();

  /** For the next scan only. */
  int lateMs;

  final EnumSet<Request> asked = EnumSet.noneOf(Request.class);

  static Temperature read(double celsius) {
    return new Temperature(true, true, celsius);
  }

  /** The same probe giving nothing that can be believed. */
  static Temperature bad(Temperature before) {
    return new Temperature(true, false, before.celsius());
  }

  InterlockInputs take(boolean fanCommanded) {
    Proof follows = fanCommanded ? Proof.PRESENT : Proof.ABSENT;
    InterlockInputs in =
        new InterlockInputs(
            Interlock.PERIOD_MS + lateMs,
            lateMs,
            airflow == null ? follows : airflow,
            tachometer == null ? follows : tachometer,
            bath,
            second,
            plate,
            setC,
            circuit,
            lines,
            Set.copyOf(asked),
            atTray,
            store,
            hostSilentMs,
            contactTest,
            contactsSound,
            looking,
            level,
            startUnconfirmed,
            findings);
    asked.clear();
    lateMs = 0;
    return in;
  }
}
