package trayward.host.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.bath.Amount;
import trayward.host.bath.Solution;
import trayward.host.session.Correction;
import trayward.host.session.ShelfItem;
import trayward.host.session.ShelfKind;

/** The table of the shelf. What was taken off stays, with the time. */
final class ShelfRows {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final TypeReference<TreeMap<String, String>> FIELDS = new TypeReference<>() {};

  private ShelfRows() {}

  static List<ShelfItem> standing(Handle handle) {
    return handle
        .createQuery("SELECT * FROM shelf WHERE gone_wall_ms IS NULL ORDER BY kind, name, id")
        .map(ShelfRows::item)
        .list();
  }

  /** A thing, when it was put there and when it was taken off. */
  record Ever(ShelfItem item, Instant put, Optional<Instant> gone) {}

  static List<Ever> ever(Handle handle) {
    return handle
        .createQuery("SELECT * FROM shelf ORDER BY id")
        .map(
            (row, context) ->
                new Ever(
                    item(row, context),
                    Cells.wall(row, "wall_ms"),
                    Cells.wallIfAny(row, "gone_wall_ms")))
        .list();
  }

  static Optional<ShelfItem> byId(Handle handle, long id) {
    return handle
        .createQuery("SELECT * FROM shelf WHERE id = :id AND gone_wall_ms IS NULL")
        .bind("id", id)
        .map(ShelfRows::item)
        .findOne();
  }

  static Optional<ShelfItem> byName(Handle handle, ShelfKind kind, String name) {
    return handle
        .createQuery(
            """
            SELECT * FROM shelf WHERE kind = :kind AND name = :name COLLATE NOCASE
              AND gone_wall_ms IS NULL
            """)
        .bind("kind", kind.word())
        .bind("name", name)
        .map(ShelfRows::item)
        .findOne();
  }

  static ShelfItem add(
      Handle handle, ShelfKind kind, String name, Map<String, String> fields, Instant wall) {
    long id =
        handle
            .createUpdate(
                """
                INSERT INTO shelf (kind, name, body, wall_ms) VALUES (:kind, :name, :body, :wall)
                """)
            .bind("kind", kind.word())
            .bind("name", name)
            .bind("body", text(fields))
            .bind("wall", wall.toEpochMilli())
            .executeAndReturnGeneratedKeys()
            .mapTo(Long.class)
            .one();
    return byId(handle, id).orElseThrow();
  }

  /** Changes name and fields; what they were is kept. */
  static ShelfItem change(
      Handle handle, ShelfItem was, String name, Map<String, String> fields, Instant wall) {
    kept(handle, was, wall, "name", was.name(), name);
    for (var rule : was.kind().fields()) {
      kept(
          handle,
          was,
          wall,
          rule.name(),
          was.text(rule.name()).orElse(""),
          fields.getOrDefault(rule.name(), ""));
    }
    handle
        .createUpdate("UPDATE shelf SET name = :name, body = :body WHERE id = :id")
        .bind("name", name)
        .bind("body", text(fields))
        .bind("id", was.id())
        .execute();
    return byId(handle, was.id()).orElseThrow();
  }

  private static void kept(
      Handle handle, ShelfItem of, Instant wall, String field, String was, String became) {
    CorrectionRows.keep(
        handle, new Correction(wall, Correction.Thing.SHELF, of.id(), field, was, became));
  }

  /** Takes it off; baths that have it in their book keep it by name. */
  static void takeOff(Handle handle, long id, Instant wall) {
    handle
        .createUpdate("UPDATE shelf SET gone_wall_ms = :wall WHERE id = :id")
        .bind("wall", wall.toEpochMilli())
        .bind("id", id)
        .execute();
  }

  /**
   * What can be poured: concentrates and stocks, those taken off too, so that an old book still
   * balances; of one name the newest counts.
   */
  static List<Solution> solutions(Handle handle) {
    List<Solution> all = new ArrayList<>();
    handle
        .createQuery(
            """
            SELECT * FROM shelf WHERE kind IN ('concentrate', 'stock')
              ORDER BY gone_wall_ms IS NULL, id
            """)
        .map(ShelfRows::item)
        .forEach(item -> all.add(solution(item)));
    return all;
  }

  /** The same of what stands there now. */
  static List<Solution> solutionsStanding(Handle handle) {
    return standing(handle).stream()
        .filter(i -> i.kind() == ShelfKind.CONCENTRATE || i.kind() == ShelfKind.STOCK)
        .map(ShelfRows::solution)
        .toList();
  }

  private static Solution solution(ShelfItem item) {
    if (item.kind() == ShelfKind.STOCK) {
      return new Solution(
          item.name(),
          false,
          Amount.within(10 * item.number("bromide_percent", 0), Solution.STOCK_SHARE),
          Amount.within(10 * item.number("sulfite_percent", 0), Solution.STOCK_SHARE));
    }
    return new Solution(item.name(), true, told(item, "bromide"), told(item, "sulfite"));
  }

  /** Give or take is told with a coverage factor of 2, as people mean it. */
  private static Amount told(ShelfItem item, String salt) {
    return new Amount(
        item.number(salt + "_g_per_l", 0), item.number(salt + "_doubt_g_per_l", 0) / 2);
  }

  private static ShelfItem item(ResultSet row, StatementContext context) throws SQLException {
    return new ShelfItem(
        row.getLong("id"),
        ShelfKind.of(row.getString("kind")).orElseThrow(),
        row.getString("name"),
        fields(row.getString("body")));
  }

  private static Map<String, String> fields(String body) {
    try {
      return JSON.readValue(body, FIELDS);
    } catch (JsonProcessingException e) {
      throw new LogFailed("the shelf holds something that cannot be read.", e);
    }
  }

  private static String text(Map<String, String> fields) {
    try {
      return JSON.writeValueAsString(new TreeMap<>(fields));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("texts by name can always be written", e);
    }
  }
}
