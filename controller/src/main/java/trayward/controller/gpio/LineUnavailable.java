package trayward.controller.gpio;

import java.util.Locale;

/** Lines that cannot be had, as one sentence for the person. */
public final class LineUnavailable extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** A chain of causes longer than this is a circle. */
  private static final int MOST_CAUSES = 10;

  private LineUnavailable(String sentence, Throwable cause) {
    super(sentence, cause);
  }

  private LineUnavailable(String sentence) {
    super(sentence);
  }

  /** One line is refused: held by another program, not permitted, or not there. */
  static LineUnavailable line(String words, int line, Throwable cause) {
    String which = "line " + line + " (" + words + ")";
    String why = causes(cause);
    if (why.contains("busy")) {
      return new LineUnavailable(which + " is held by another program", cause);
    }
    if (why.contains("gpio chip")) {
      return chip(cause);
    }
    if (denied(why)) {
      return new LineUnavailable(which + " may not be used by this user", cause);
    }
    return new LineUnavailable(which + " is not there or cannot be used so", cause);
  }

  /** The chip is refused as a whole. */
  static LineUnavailable chip(Throwable cause) {
    return new LineUnavailable(
        denied(causes(cause))
            ? "the lines of this computer may not be used by this user: it must be in the group"
                + " that owns /dev/gpiochip0"
            : "this computer has no chip with lines (a /dev/gpiochip whose label has pinctrl)",
        cause);
  }

  /** The computer is of another family. */
  static LineUnavailable noPi() {
    return new LineUnavailable("this computer is not known as a Pi, so it has no such lines");
  }

  private static boolean denied(String why) {
    return why.contains("permission denied") || why.contains("not permitted");
  }

  private static String causes(Throwable cause) {
    StringBuilder said = new StringBuilder();
    Throwable next = cause;
    for (int i = 0; i < MOST_CAUSES && next != null; i++) {
      said.append(next.getMessage()).append('\n');
      next = next.getCause();
    }
    return said.toString().toLowerCase(Locale.ROOT);
  }
}
