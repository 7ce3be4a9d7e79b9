package trayward.controller.station;

import static trayward.controller.station.Entry.number;
import static trayward.controller.station.Entry.text;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import trayward.controller.event.TrayEvent;

/** Input registers of the newest events: event n stands in slot n modulo the slots. */
public final class EventRegisters {

  /** Address of the first slot. */
  public static final int BASE = 1000;

  /** Registers of a slot: two are read at once. */
  public static final int EACH = 60;

  /** How many slots. */
  public static final int SLOTS = EventTail.SLOTS;

  private static final int SUBJECT_WORDS = 16;
  private static final int DETAIL_WORDS = EACH - 5 - SUBJECT_WORDS;

  private static final List<Slot> ALL = slots();

  private EventRegisters() {}

  /**
   * One slot.
   *
   * @param number number of the event since power-up; 0 where none stands there
   * @param uptime when, s since power-up
   * @param kind what sort
   * @param subject what it concerns
   * @param detail the rest, in words
   */
  public record Slot(Entry number, Entry uptime, Entry kind, Entry subject, Entry detail) {
    private List<Entry> all() {
      return List.of(number, uptime, kind, subject, detail);
    }
  }

  /** A slot. */
  public static Slot slot(int index) {
    return ALL.get(index);
  }

  private static List<Slot> slots() {
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < SLOTS; i++) {
      slots.add(slot(BASE + EACH * i, i));
    }
    return List.copyOf(slots);
  }

  private static Slot slot(int at, int i) {
    String p = "event_" + i + "_";
    return new Slot(
        number(
            at,
            Form.LONG_COUNT,
            p + "number",
            "",
            "number of the event; 0 for none",
            m -> m.events().slot(i).map(e -> (double) e.number()).orElse(0.0)),
        number(
            at + 2,
            Form.LONG_TENTHS,
            p + "uptime",
            "s",
            "when, since power-up",
            m ->
                m.events()
                    .slot(i)
                    .map(e -> m.now().uptimeS(e.event().atNanos()))
                    .orElse(Double.NaN)),
        number(
            at + 4,
            Form.COUNT,
            p + "kind",
            "",
            "what sort, see below",
            m ->
                m.events()
                    .slot(i)
                    .map(e -> (double) Codes.EVENT.code(e.event().kind()))
                    .orElse(0.0)),
        text(at + 5, SUBJECT_WORDS, p + "subject", "what it concerns", of(i, TrayEvent::subject)),
        text(
            at + 5 + SUBJECT_WORDS,
            DETAIL_WORDS,
            p + "detail",
            "the rest, in words",
            of(i, TrayEvent::detail)));
  }

  private static Function<Moment, String> of(int slot, Function<TrayEvent, String> what) {
    return m -> m.events().slot(slot).map(e -> what.apply(e.event())).orElse("");
  }

  static List<Entry> all() {
    List<Entry> all = new ArrayList<>();
    ALL.forEach(slot -> all.addAll(slot.all()));
    return all;
  }
}
