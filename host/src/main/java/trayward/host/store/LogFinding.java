package trayward.host.store;

import trayward.host.bath.Problem;

/**
 * Something wrong in a log. Immutable.
 *
 * @param table the table
 * @param id the row's id in it
 * @param problem what was found and what belongs there
 */
public record LogFinding(String table, String id, Problem problem) {

  static LogFinding of(String table, Object id, String field, Object found, String accepted) {
    return new LogFinding(
        table, String.valueOf(id), new Problem(field, String.valueOf(found), accepted));
  }

  /** One line for the person. */
  public String line() {
    return String.format(
        "%s %s: %s: found '%s', accepted is %s",
        table, id, problem.field(), problem.found().replaceAll("\\s", " "), problem.accepted());
  }
}
