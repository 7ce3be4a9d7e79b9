package trayward.host.store;

import static trayward.host.store.LogColumn.centiC;
import static trayward.host.store.LogColumn.id;
import static trayward.host.store.LogColumn.real;
import static trayward.host.store.LogColumn.sessionMs;
import static trayward.host.store.LogColumn.text;
import static trayward.host.store.LogColumn.wallMs;
import static trayward.host.store.LogColumn.whole;
import static trayward.host.store.LogColumn.word;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.bath.EntryKind;
import trayward.host.session.Correction;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.PrintField;
import trayward.host.session.PrintStep;
import trayward.host.session.ShelfItem;
import trayward.host.session.ShelfKind;
import trayward.host.session.StepKind;

/**
 * Every table that is exported, those referred to first. What is worked out of them is not: {@code
 * print_baths}, {@code print_summaries}, {@code print_paces}, {@code print_words}, and {@code
 * contents} of what was carried over. Stateless.
 */
final class LogTables {

  /** What stands in the log may be longer than what is corrected: the longest text twice. */
  private static final int CORRECTED_MAX = 2 * Print.NOTES_MAX;

  /** Fields of a thing of the shelf with their names. */
  private static final int BODY_MAX = 4000;

  private static final LogTable SESSIONS =
      new LogTable(
          "sessions",
          List.of(
              id("id"),
              wallMs("started_wall_ms"),
              wallMs("ended_wall_ms").orNothing(),
              text("ending", TrayLog.ENDING_MAX),
              whole("simulated", 0, 1),
              text("symptoms", (int) PrintRecord.SYMPTOMS.most())),
          "id",
          RowRules::session);

  private static final LogTable PRINTS =
      new LogTable(
          "prints",
          List.of(
              id("number"),
              LogColumn.of("session_id", "sessions"),
              wallMs("started_wall_ms"),
              text("title", Print.TITLE_MAX),
              text("notes", Print.NOTES_MAX),
              sessionMs("closed_ms").orNothing(),
              LogColumn.of("closed_by", "prints").orNothing()),
          "number",
          row -> Optional.empty());

  private static final LogTable MARKS =
      new LogTable(
          "marks",
          List.of(
              id("id"),
              LogColumn.of("print", "prints"),
              word("kind", Arrays.stream(MarkKind.values()).map(MarkKind::word).toList()),
              sessionMs("session_ms"),
              wallMs("wall_ms"),
              text("made_by", TrayLog.BY_MAX),
              centiC("bath_centi_c"),
              whole("undone", 0, 1),
              wallMs("undone_wall_ms").orNothing()),
          "id",
          RowRules::mark);

  private static final LogTable BATHS =
      new LogTable(
          "baths",
          List.of(
              id("id"),
              wallMs("made_wall_ms"),
              text("name", Bath.NAME_MAX),
              real("litres", 0, Bath.LITRES_MAX),
              text("note", Bath.NOTE_MAX)),
          "id",
          RowRules::bath);

  private static final LogTable SHELF =
      new LogTable(
          "shelf",
          List.of(
              id("id"),
              word("kind", Arrays.stream(ShelfKind.values()).map(ShelfKind::word).toList()),
              text("name", ShelfItem.NAME_MAX),
              text("body", BODY_MAX),
              wallMs("wall_ms"),
              wallMs("gone_wall_ms").orNothing()),
          "id",
          RowRules::shelf);

  private static final LogTable ADDITIONS =
      new LogTable(
          "additions",
          List.of(
              id("id"),
              LogColumn.of("bath_id", "baths"),
              wallMs("wall_ms"),
              sessionMs("session_ms").orNothing(),
              LogColumn.of("session_id", "sessions").orNothing(),
              word("kind", Arrays.stream(EntryKind.values()).map(EntryKind::word).toList()),
              text("what", BookEntry.WHAT_MAX),
              text("dilution", 40),
              real("millilitres", 0, BookEntry.LEVEL_MAX),
              id("other").orNothing(),
              centiC("temperature_centi_c"),
              real("doubt_ml", 0, BookEntry.LEVEL_MAX),
              sessionMs("hot_ms"),
              wallMs("taken_back_wall_ms").orNothing()),
          "id",
          RowRules::entry);

  private static final LogTable IN_TRAY =
      new LogTable(
          "in_tray",
          List.of(id("id"), LogColumn.of("bath_id", "baths").orNothing(), wallMs("wall_ms")),
          "id",
          row -> Optional.empty());

  private static final LogTable ACCOUNTED =
      new LogTable(
          "accounted",
          List.of(
              whole("one", 1, 1), LogColumn.of("session_id", "sessions"), sessionMs("up_to_ms")),
          "one",
          row -> Optional.empty());

  private static final LogTable FIELDS =
      new LogTable(
          "print_fields",
          List.of(
              LogColumn.of("print", "prints"),
              word("field", PrintField.words()),
              text("value", Print.NOTES_MAX)),
          "print, field",
          RowRules::field);

  private static final LogTable STEPS =
      new LogTable(
          "print_steps",
          List.of(
              id("id"),
              LogColumn.of("print", "prints"),
              word("kind", Arrays.stream(StepKind.values()).map(StepKind::word).toList()),
              real("seconds", 0, PrintStep.SECONDS.most()).orNothing(),
              text("dilution", 40),
              text("what", (int) PrintStep.WHAT.most()),
              wallMs("wall_ms"),
              wallMs("taken_back_wall_ms").orNothing()),
          "id",
          RowRules::step);

  /** Pictures of prints; the files lie beside. */
  static final LogTable PICTURES =
      new LogTable(
          "pictures",
          List.of(
              id("id"),
              LogColumn.of("print", "prints"),
              text("file", 84),
              word("type", List.of("image/jpeg", "image/png")),
              whole("width", 1, PictureCore.SIDE_MAX),
              whole("height", 1, PictureCore.SIDE_MAX),
              whole("bytes", 1, Pictures.BYTES_MAX),
              wallMs("wall_ms"),
              wallMs("taken_back_wall_ms").orNothing()),
          "id",
          RowRules::picture);

  private static final LogTable CORRECTIONS =
      new LogTable(
          "corrections",
          List.of(
              id("id"),
              wallMs("wall_ms"),
              word(
                  "thing",
                  Arrays.stream(Correction.Thing.values()).map(Correction.Thing::word).toList()),
              id("thing_id"),
              text("field", 80),
              text("was", CORRECTED_MAX),
              text("became", CORRECTED_MAX)),
          "id",
          row -> Optional.empty());

  private static final LogTable EVENTS =
      new LogTable(
          "events",
          List.of(
              id("id"),
              LogColumn.of("session_id", "sessions").orNothing(),
              wallMs("wall_ms"),
              whole("uptime_ms", Long.MIN_VALUE / 2, Long.MAX_VALUE / 2),
              text("kind", LogEvent.KIND_MAX),
              text("subject", LogEvent.SUBJECT_MAX),
              text("detail", LogEvent.DETAIL_MAX)),
          "id",
          row -> Optional.empty());

  /** A session's trace; which session is said by the name of the file. */
  static final LogTable TRACE =
      new LogTable(
          "trace",
          List.of(
              sessionMs("t_ms"),
              centiC("bath_centi_c"),
              centiC("plate_centi_c"),
              centiC("set_centi_c"),
              whole("duty_permille", 0, 1000),
              text("state", 40).orNothing(),
              whole("fan_proven", 0, 1)),
          "t_ms",
          row -> Optional.empty());

  /** All but the trace. */
  static final List<LogTable> ALL =
      List.of(
          SESSIONS,
          PRINTS,
          MARKS,
          BATHS,
          SHELF,
          ADDITIONS,
          IN_TRAY,
          ACCOUNTED,
          FIELDS,
          STEPS,
          PICTURES,
          CORRECTIONS,
          EVENTS);

  private LogTables() {}
}
