package trayward.controller.station;

import static trayward.controller.station.Entry.number;
import static trayward.controller.station.Entry.text;

import java.util.List;
import trayward.controller.keep.LearnedTray;
import trayward.controller.regulate.TrayLesson;

/** Input registers of what changes seldom: texts, and what is on record of the tray. */
public final class TrayRegisters {

  /** Address of the first. */
  public static final int BASE = 100;

  /** How many there are. */
  public static final int WORDS = 121;

  /** What the last warm-up showed. */
  public static final Entry LESSON =
      text(
          BASE,
          32,
          "tray_seen",
          "what the last warm-up showed, in words; empty before one",
          m -> m.now().tray().lesson().map(TrayLesson::words).orElse(""));

  /** Name of the tray on record. */
  public static final Entry LEARNED_NAME =
      text(
          BASE + 32,
          24,
          "learned_name",
          "name of the tray on record; empty where none is",
          m -> m.learned().map(LearnedTray::name).orElse(""));

  /** When it was learned. */
  public static final Entry LEARNED_DAY =
      number(
          BASE + 56,
          Form.COUNT,
          "learned_day",
          "d",
          "day of that warm-up, from 1970-01-01",
          m -> m.learned().map(t -> (double) t.epochDay()).orElse(Double.NaN));

  /** Whether a litre was measured. */
  public static final Entry LITRE_MEASURED =
      number(
          BASE + 57,
          Form.COUNT,
          "litre_measured",
          "",
          "1 where its heater was measured with a litre",
          m -> m.learned().map(t -> t.measured() ? 1.0 : 0).orElse(0.0));

  /** Why a start must be confirmed. */
  public static final Entry START_UNCONFIRMED =
      text(
          BASE + 58,
          63,
          "start_unconfirmed",
          "why a start must be confirmed, in words; empty where it need not be",
          Moment::startUnconfirmed);

  private TrayRegisters() {}

  static List<Entry> all() {
    return List.of(LESSON, LEARNED_NAME, LEARNED_DAY, LITRE_MEASURED, START_UNCONFIRMED);
  }
}
