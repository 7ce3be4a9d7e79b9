package trayward.controller.transmitter;

/** What comes back from the line when registers are asked for. */
public sealed interface Answer {

  /**
   * Registers, as asked.
   *
   * @param values each 0 to 65535
   */
  @SuppressWarnings("ArrayRecordComponent") // handed from the line to the decoder, never compared
  record Registers(int[] values) implements Answer {}

  /** An answer whose check sum is wrong: a disturbed line. */
  record CheckSumWrong() implements Answer {}

  /**
   * No answer in time, no line, or one that refuses.
   *
   * @param why in words, for the log
   */
  record Nothing(String why) implements Answer {}
}
