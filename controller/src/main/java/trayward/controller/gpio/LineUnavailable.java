package trayward.controller.gpio;

/** A line that cannot be had: held by another program, or not there. */
public final class LineUnavailable extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** Says which line and for what. */
  public LineUnavailable(String name, int line, Throwable cause) {
    super(
        "line "
            + line
            + " ("
            + name
            + ") cannot be had: it is held by another program or is not there",
        cause);
  }
}
