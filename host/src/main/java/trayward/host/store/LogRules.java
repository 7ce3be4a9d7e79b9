package trayward.host.store;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import trayward.host.session.Print;

/**
 * What must hold between the rows of a log. Wall-clock times are no part of it: a clock may have
 * been set while a session ran, so a trace is held to the 31 days of a session and not to its wall
 * clock. Stateless.
 */
final class LogRules {

  /** Most rows told of one rule: the rest is more of the same. */
  private static final int TOLD_MAX = 50;

  /** A query gives id and what was found of each row that breaks the rule. */
  private record Rule(String table, String field, String accepted, String query) {}

  private static final String LIVE =
      " FROM marks a JOIN marks b ON a.print = b.print AND a.undone = 0 AND b.undone = 0 ";

  private static final List<Rule> RULES =
      List.of(
          new Rule(
              "prints",
              "marks",
              "an in where there is any mark",
              """
              SELECT DISTINCT print, 'no in' FROM marks m WHERE undone = 0 AND NOT EXISTS
                (SELECT 1 FROM marks i WHERE i.print = m.print AND i.kind = 'in' AND i.undone = 0)
              """),
          new Rule(
              "marks",
              "session_ms",
              "in, emergence, pull in order of time",
              "SELECT b.id, b.session_ms"
                  + LIVE
                  + "WHERE instr('in emergence pull', a.kind) < instr('in emergence pull', b.kind)"
                  + " AND a.session_ms > b.session_ms"),
          new Rule(
              "marks",
              "session_ms",
              "before the next print of its session goes in",
              """
              SELECT m.id, m.session_ms FROM marks m JOIN prints p ON p.number = m.print
                JOIN prints q ON q.session_id = p.session_id AND q.number > p.number
                JOIN marks i ON i.print = q.number AND i.kind = 'in' AND i.undone = 0
                WHERE m.undone = 0 AND m.session_ms > i.session_ms GROUP BY m.id
              """),
          new Rule(
              "prints",
              "marks",
              "at most " + Print.MARKS_MAX + " marks",
              "SELECT print, count(*) FROM marks GROUP BY print HAVING count(*) > "
                  + Print.MARKS_MAX),
          new Rule(
              "prints",
              "closed_ms",
              "none where it was pulled, none before its last mark",
              """
              SELECT number, closed_ms FROM prints JOIN marks ON print = number AND undone = 0
                WHERE closed_ms IS NOT NULL AND (kind = 'pull' OR session_ms > closed_ms)
                GROUP BY number
              """),
          new Rule(
              "prints",
              "closed_by",
              "a later print of its session",
              """
              SELECT p.number, p.closed_by FROM prints p JOIN prints q ON q.number = p.closed_by
                WHERE q.session_id <> p.session_id OR q.number <= p.number
                  OR p.closed_ms IS NULL
              """),
          new Rule(
              "prints",
              "closed_ms",
              "a pull, or where it was left: its session is over or another print went in",
              "SELECT number, 'nothing' FROM prints p JOIN sessions s ON s.id = p.session_id WHERE "
                  + PrintRows.SHOWN
                  + """
                     AND closed_ms IS NULL AND NOT EXISTS
                      (SELECT 1 FROM marks WHERE print = number AND kind = 'pull' AND undone = 0)
                    AND (s.ended_wall_ms IS NOT NULL OR EXISTS
                      (SELECT 1 FROM prints q JOIN marks m ON m.print = q.number AND m.undone = 0
                        WHERE q.session_id = p.session_id AND q.number > p.number))
                    """),
          new Rule(
              "sessions",
              "ended_wall_ms",
              "one open session at most",
              """
              SELECT id, 'open' FROM sessions WHERE ended_wall_ms IS NULL
                AND (SELECT count(*) FROM sessions WHERE ended_wall_ms IS NULL) > 1
              """),
          new Rule(
              "additions",
              "other",
              "another bath, for a carried-over with its taken-over behind it",
              """
              SELECT a.id, a.other FROM additions a LEFT JOIN additions t ON t.id = a.id + 1
                  AND t.kind = 'taken-over' AND t.bath_id = a.other AND t.other = a.bath_id
                  AND t.millilitres = a.millilitres
                  AND (t.taken_back_wall_ms IS NULL) = (a.taken_back_wall_ms IS NULL)
                WHERE a.kind = 'carried-over' AND (t.id IS NULL OR a.other = a.bath_id)
              """),
          new Rule(
              "additions",
              "other",
              "the bath of the carried-over before it",
              """
              SELECT t.id, t.other FROM additions t LEFT JOIN additions a ON a.id = t.id - 1
                  AND a.kind = 'carried-over' AND a.bath_id = t.other
                WHERE t.kind = 'taken-over' AND a.id IS NULL
              """),
          new Rule(
              "additions",
              "other",
              "a print of the log, in one book only",
              """
              SELECT id, other FROM additions a WHERE kind = 'printed' AND
                (other NOT IN (SELECT number FROM prints)
                  OR (taken_back_wall_ms IS NULL AND EXISTS (SELECT 1 FROM additions b
                    WHERE b.kind = 'printed' AND b.other = a.other AND b.id < a.id
                      AND b.taken_back_wall_ms IS NULL)))
              """),
          new Rule(
              "corrections",
              "thing_id",
              "an id of what was corrected",
              """
              SELECT id, thing || ' ' || thing_id FROM corrections WHERE NOT EXISTS (SELECT 1 FROM
                (SELECT 'print' AS t, number AS n FROM prints UNION ALL
                 SELECT 'session', id FROM sessions UNION ALL SELECT 'bath', id FROM baths
                 UNION ALL SELECT 'addition', id FROM additions
                 UNION ALL SELECT 'shelf', id FROM shelf)
                WHERE t = thing AND n = thing_id)
              """),
          new Rule(
              "trace",
              "t_ms",
              "0 to 31 days of a session of the log",
              """
              SELECT session_id, t_ms FROM trace WHERE t_ms NOT BETWEEN 0 AND 2678400000
                OR session_id NOT IN (SELECT id FROM sessions)
              """));

  private LogRules() {}

  static List<LogFinding> findings(Handle handle) {
    List<LogFinding> found = new ArrayList<>();
    for (Rule rule : RULES) {
      handle
          .createQuery(rule.query() + " LIMIT " + TOLD_MAX)
          .map(
              (row, context) ->
                  LogFinding.of(
                      rule.table(),
                      row.getString(1),
                      rule.field(),
                      row.getString(2),
                      rule.accepted()))
          .forEach(found::add);
    }
    return found;
  }
}
