package trayward.controller.gpio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Runs in the emulated computer and stands outside of the program under test: it moves contacts,
 * looks at lamps, kills. It judges nothing: it writes down facts, {@code key=value}.
 */
final class EmulatedGuest {

  private static final Path OUT = Path.of("/out");
  private static final Path FACTS = OUT.resolve("facts");
  private static final String PROBE = EmulatedProbe.class.getName();
  private static final long MS = 1_000_000L;

  /** What a busy computer spoils is tried again. */
  private static final int ATTEMPTS = 4;

  /** Well below any debounce. */
  private static final long SPARK_NANOS = 4 * MS;

  private final SimChip chip;

  private EmulatedGuest(SimChip chip) {
    this.chip = chip;
  }

  public static void main(String[] args) throws IOException, InterruptedException {
    EmulatedGuest guest = new EmulatedGuest(SimChip.find());
    guest.probe();
    guest.afterKill();
    EmulatedHeat.run(guest.chip);
    EmulatedProgram.run(guest.chip);
  }

  static synchronized void fact(String key, Object value) throws IOException {
    Files.writeString(
        FACTS, key + "=" + value + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }

  /** The outputs that are high, by key. */
  static String lamps(SimChip chip) throws IOException {
    StringBuilder on = new StringBuilder();
    for (PiLine function : PiLine.values()) {
      if (function.output() && chip.high(function)) {
        on.append(on.isEmpty() ? "" : " ").append(function.key());
      }
    }
    return on.toString();
  }

  private Told taken(String name) throws IOException {
    Told probe = Told.main(OUT.resolve(name + ".err"), PROBE);
    fact(name + ".taken", probe.hear());
    return probe;
  }

  private void probe() throws IOException, InterruptedException {
    long from = System.nanoTime();
    try (Told probe = taken("probe")) {
      fact("probe.start_ms", (System.nanoTime() - from) / MS);
      fact("probe.lamps_at_once", lamps(chip));
      fact(
          "probe.pulls",
          Stream.of(PiLine.values())
              .filter(f -> !f.output() && !f.optional())
              .map(this::pull)
              .distinct()
              .collect(Collectors.joining(" ")));
      for (PiLine function : PiLine.values()) {
        if (function.output()) {
          probe.ask("write " + function.key() + " on");
          fact("probe.on." + function.key(), lamps(chip));
          probe.ask("write " + function.key() + " off");
        }
      }
      fact("probe.lamps_after", lamps(chip));
      contacts(probe);
      pulses(probe);
      try (Told second = taken("second")) {
        fact("second.exit", second.exit());
      }
      fact("probe.after_second", probe.ask("read"));
      allOn(probe);
      fact("killed.lamps_before", lamps(chip));
      fact("killed.exit", probe.kill());
      fact("killed.lamps_after", lamps(chip));
    }
  }

  private String pull(PiLine function) {
    try {
      return chip.pull(function);
    } catch (IOException e) {
      return "unreadable";
    }
  }

  private void contacts(Told probe) throws IOException {
    fact("contacts.rest", probe.ask("read"));
    chip.contact(PiLine.AIRFLOW, true);
    chip.contact(PiLine.STOP_BUTTON, true);
    fact("contacts.air_and_stop", probe.ask("read"));
    chip.contact(PiLine.AIRFLOW, false);
    fact("contacts.air_gone", probe.ask("read"));
    spark(probe);
    tap(PiLine.PEDAL, 60 * MS);
    settle();
    fact("contacts.pedal_60_ms", probe.ask("read"));
    fact("contacts.pedal_told_once", probe.ask("read"));
    chip.contact(PiLine.PEDAL, true);
    settle();
    fact("contacts.pedal_down", probe.ask("read"));
    fact("contacts.pedal_still_down", probe.ask("read"));
    chip.contact(PiLine.PEDAL, false);
    settle();
    fact("contacts.pedal_up", probe.ask("read"));
    chip.contact(PiLine.STOP_BUTTON, false);
    pause(20 * MS);
    chip.contact(PiLine.STOP_BUTTON, true);
    settle();
    fact("contacts.stop_between_scans", probe.ask("read"));
    fact("contacts.stop_whole_again", probe.ask("read"));
    chip.contact(PiLine.RESET_BUTTON, true);
    chip.contact(PiLine.PRESENCE_BUTTON, true);
    settle();
    fact("contacts.both_buttons", probe.ask("read"));
    chip.contact(PiLine.RESET_BUTTON, false);
    chip.contact(PiLine.PRESENCE_BUTTON, false);
    settle();
  }

  /** A contact closed for a millisecond; again where a busy computer made it longer. */
  private void spark(Told probe) throws IOException {
    long nanos = Long.MAX_VALUE;
    for (int attempt = 0; attempt < ATTEMPTS && nanos > SPARK_NANOS; attempt++) {
      nanos = tap(PiLine.PEDAL, MS);
      settle();
      fact("contacts.pedal_spark", probe.ask("read"));
    }
    fact("contacts.spark_us", nanos / 1000);
  }

  /** Closes a contact for so long; gives how long it really was, ns. */
  private long tap(PiLine function, long nanos) throws IOException {
    long from = System.nanoTime();
    chip.contact(function, true);
    pause(nanos);
    chip.contact(function, false);
    return System.nanoTime() - from;
  }

  /**
   * 400 pulses, each waited for, so that no busy computer can hide one; then as many at the pace of
   * a fan of 1500 a minute, and five times as fast, as they come.
   */
  private void pulses(Told probe) throws IOException {
    // The kernel keeps 16 edges while Java loads what hears its first ones.
    turn(20, 20 * MS);
    settle();
    for (int attempt = 1, counted = 0; attempt <= ATTEMPTS && counted != 400; attempt++) {
      counted = waitedFor(probe, 400);
      fact("pulses.counted_of_400", counted);
      fact("pulses.attempts", attempt);
    }
    long before = count(probe);
    long paceFrom = System.nanoTime();
    turn(400, 20 * MS);
    double seconds = (System.nanoTime() - paceFrom) / 1e9;
    fact("pulses.rpm_read", probe.ask("read"));
    fact("pulses.rpm_driven", String.format(Locale.ROOT, "%.0f", 400 / seconds / 2 * 60));
    settle();
    long after = count(probe);
    fact("pulses.paced_counted_of_400", after - before);
    long fastFrom = System.nanoTime();
    turn(400, 4 * MS);
    fact("pulses.fast_took_ms", (System.nanoTime() - fastFrom) / MS);
    pause(1000 * MS);
    fact("pulses.rpm_standing", probe.ask("read"));
    fact("pulses.fast_counted_of_400", count(probe) - after);
  }

  /** Makes so many pulses, and waits until each has been counted; gives how many were. */
  private int waitedFor(Told probe, int pulses) throws IOException {
    long before = count(probe);
    for (int i = 0; i < pulses; i++) {
      long so = count(probe);
      chip.contact(PiLine.TACHOMETER, true);
      long from = System.nanoTime();
      while (count(probe) == so && System.nanoTime() - from < 1000 * MS) {
        pause(MS);
      }
      chip.contact(PiLine.TACHOMETER, false);
      pause(20 * MS);
    }
    return (int) (count(probe) - before);
  }

  private static long count(Told probe) throws IOException {
    return Long.parseLong(probe.ask("pulses"));
  }

  private void turn(int pulses, long periodNanos) throws IOException {
    long due = System.nanoTime();
    for (int i = 0; i < pulses; i++) {
      chip.contact(PiLine.TACHOMETER, true);
      due += periodNanos / 2;
      until(due);
      chip.contact(PiLine.TACHOMETER, false);
      due += periodNanos / 2;
      until(due);
    }
  }

  private void afterKill() throws IOException, InterruptedException {
    chip.contact(PiLine.STOP_BUTTON, false);
    Told probe = taken("after_kill");
    fact("after_kill.lamps", lamps(chip));
    fact("after_kill.read", probe.ask("read"));
    allOn(probe);
    probe.close();
    fact("closed.exit", probe.exit());
    fact("closed.lamps_after", lamps(chip));
  }

  private static void allOn(Told probe) throws IOException {
    for (PiLine function : PiLine.values()) {
      if (function.output()) {
        probe.ask("write " + function.key() + " on");
      }
    }
  }

  /** Long beyond any debounce of the default lines, and what a busy computer adds. */
  private static void settle() {
    pause(200 * MS);
  }

  static void pause(long nanos) {
    until(System.nanoTime() + nanos);
  }

  private static void until(long dueNanos) {
    for (long left = dueNanos - System.nanoTime(); left > 0; left = dueNanos - System.nanoTime()) {
      LockSupport.parkNanos(Math.min(left, TimeUnit.MILLISECONDS.toNanos(50)));
    }
  }
}
