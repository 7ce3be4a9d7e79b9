package trayward.controller.station;

import static trayward.controller.station.Entry.number;
import static trayward.controller.station.Entry.text;

import java.util.List;

/** Input registers of what became of the last command, with the reason in words. */
public final class AnswerRegisters {

  /** Address of the first. */
  public static final int BASE = 700;

  /** How many there are: one read. */
  public static final int WORDS = 122;

  /** Token of the command, once more, so that it is read together with the words. */
  public static final Entry TOKEN =
      number(BASE, Form.BITS, "answer_token", "", "token of the command", m -> m.answer().token());

  /** What became of it. */
  public static final Entry RESULT =
      number(
          BASE + 1,
          Form.COUNT,
          "answer_result",
          "",
          "as result above",
          m -> Codes.OUTCOME.code(m.answer().outcome()));

  /** Why. */
  public static final Entry REASON =
      text(BASE + 2, WORDS - 2, "answer_reason", "why, in words", m -> m.answer().reason());

  private AnswerRegisters() {}

  static List<Entry> all() {
    return List.of(TOKEN, RESULT, REASON);
  }
}
