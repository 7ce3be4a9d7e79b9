package trayward.host.report;

/** A trace that cannot be used: one line with file, line, what was found and what is accepted. */
public final class TraceRefused extends Exception {

  private static final long serialVersionUID = 1L;

  /** Refuses a place of a file. */
  public TraceRefused(String file, String where, String found, String accepted) {
    super(one(file + ": " + where + ": found " + found + ", accepted is " + accepted));
  }

  private static String one(String line) {
    return line.replaceAll("[\\p{Cntrl}\\u0085\\u2028\\u2029]+", " ");
  }

  /** The line for a person; never null. */
  public String line() {
    String message = getMessage();
    return message == null ? "the trace cannot be used" : message;
  }
}
