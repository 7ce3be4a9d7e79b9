package trayward.host.store;

import trayward.host.bath.Problem;

/** What was to be imported is wrong; nothing of it was. The message is one line. */
public final class RowRefused extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final String line;

  /** A row of a file, its field, what was found and what is accepted. */
  public RowRefused(String file, String row, Problem problem) {
    this(
        file
            + " row "
            + row
            + ": "
            + problem.field()
            + ": found '"
            + problem.found().replaceAll("\\s", " ")
            + "', accepted is "
            + problem.accepted());
  }

  /** Anything else that is wrong. */
  public RowRefused(String line) {
    super(line);
    this.line = line;
  }

  /** One line for the person. */
  @Override
  public String getMessage() {
    return line;
  }
}
