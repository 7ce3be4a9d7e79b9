package trayward.host.store;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Checked;
import trayward.host.session.Correction;
import trayward.host.session.FieldRule;
import trayward.host.session.ShelfItem;
import trayward.host.session.ShelfKind;
import trayward.host.session.WorkingBath;

/**
 * What the person has and uses again: papers, concentrates, stocks, make-ups, exposures. Safe on
 * any thread.
 */
public final class Shelf {

  /** Most things on it: a lifetime's papers. */
  public static final int ITEMS_MAX = 1000;

  private final LogConnection connection;
  private final BookKeeper keeper;

  Shelf(LogConnection connection, BookKeeper keeper) {
    this.connection = connection;
    this.keeper = keeper;
  }

  /** Everything that stands there, by kind and name. */
  public List<ShelfItem> all() {
    return connection.read(ShelfRows::standing);
  }

  /** One thing by its id. */
  public Optional<ShelfItem> item(long id) {
    return connection.read(handle -> ShelfRows.byId(handle, id));
  }

  /** One thing by kind and name, whatever the case of its letters. */
  public Optional<ShelfItem> item(ShelfKind kind, String name) {
    return connection.read(handle -> ShelfRows.byName(handle, kind, name));
  }

  /** What was corrected of a thing, oldest first. */
  public List<Correction> history(long id) {
    return connection.read(
        handle -> CorrectionRows.of(handle, Correction.Thing.SHELF, id, ITEMS_MAX));
  }

  /**
   * The baths after the developer with what went through each.
   *
   * @param zone in which their days are meant
   */
  public List<WorkingBath> workingBaths(ZoneId zone) {
    return connection.read(
        handle ->
            ShelfRows.ever(handle).stream()
                .filter(e -> e.gone().isEmpty() && e.item().kind() == ShelfKind.WORKING_BATH)
                .map(e -> workingBath(handle, e, zone))
                .toList());
  }

  private static WorkingBath workingBath(Handle handle, ShelfRows.Ever ever, ZoneId zone) {
    ShelfItem item = ever.item();
    LocalDate made =
        item.text("made")
            .flatMap(FieldRule::dayOf)
            .orElseGet(() -> ever.put().atZone(zone).toLocalDate());
    LocalDate tested =
        item.text("tested").flatMap(FieldRule::dayOf).filter(d -> d.isAfter(made)).orElse(made);
    return new WorkingBath(
        item,
        made,
        ThroughRows.since(handle, item.name(), ms(made, zone)),
        ThroughRows.since(handle, item.name(), ms(tested, zone)));
  }

  private static long ms(LocalDate day, ZoneId zone) {
    return day.atStartOfDay(zone).toInstant().toEpochMilli();
  }

  /** Puts something there. */
  public Checked<ShelfItem> add(
      Instant wall, ShelfKind kind, String name, Map<String, String> fields) {
    return balanced(
        handle -> {
          insist(kind, name, fields);
          if (ShelfRows.standing(handle).size() >= ITEMS_MAX) {
            throw BookRejected.of("name", name, "a shelf with fewer than " + ITEMS_MAX + " things");
          }
          refuseTwice(handle, kind, name, 0);
          ShelfItem made = ShelfRows.add(handle, kind, name.strip(), told(fields), wall);
          // A name stands for one thing: books that have it follow what is told of it now.
          usedIn(handle, made).forEach(bath -> keeper.refresh(handle, bath));
          return made;
        });
  }

  /**
   * Changes name and fields; what they were is kept, and baths that were made of it are worked out
   * anew. What stands in a book keeps its name.
   */
  public Checked<ShelfItem> change(Instant wall, long id, String name, Map<String, String> fields) {
    return balanced(
        handle -> {
          ShelfItem was = standing(handle, id);
          insist(was.kind(), name, fields);
          refuseTwice(handle, was.kind(), name, id);
          List<Long> baths = usedIn(handle, was);
          if (!baths.isEmpty() && !was.name().equalsIgnoreCase(name.strip())) {
            throw BookRejected.of("name", name, was.name() + ", as it stands in the bath book");
          }
          ShelfItem is = ShelfRows.change(handle, was, name.strip(), told(fields), wall);
          baths.forEach(bath -> keeper.refresh(handle, bath));
          return is;
        });
  }

  /** Takes something off; what was made of it stays as it is. */
  public Checked<ShelfItem> takeOff(Instant wall, long id) {
    return balanced(
        handle -> {
          ShelfItem was = standing(handle, id);
          ShelfRows.takeOff(handle, id, wall);
          return was;
        });
  }

  private static ShelfItem standing(Handle handle, long id) {
    return ShelfRows.byId(handle, id)
        .orElseThrow(() -> BookRejected.of("id", Long.toString(id), "something on the shelf"));
  }

  private static List<Long> usedIn(Handle handle, ShelfItem item) {
    return item.kind() != ShelfKind.CONCENTRATE && item.kind() != ShelfKind.STOCK
        ? List.of()
        : handle
            .createQuery(
                """
                SELECT DISTINCT bath_id FROM additions WHERE kind = 'poured'
                  AND what = :name COLLATE NOCASE ORDER BY bath_id
                """)
            .bind("name", item.name())
            .mapTo(Long.class)
            .list();
  }

  private static void refuseTwice(Handle handle, ShelfKind kind, String name, long own) {
    if (ShelfRows.byName(handle, kind, name.strip()).filter(i -> i.id() != own).isPresent()) {
      throw BookRejected.of("name", name, "a name that no other " + kind.word() + " has");
    }
  }

  private static void insist(ShelfKind kind, String name, Map<String, String> fields) {
    if (name.isBlank() || name.strip().length() > ShelfItem.NAME_MAX) {
      throw BookRejected.of("name", name, "1 to " + ShelfItem.NAME_MAX + " characters");
    }
    fields.forEach(
        (field, value) -> {
          FieldRule rule =
              kind.fields().stream()
                  .filter(r -> r.name().equals(field))
                  .findFirst()
                  .orElseThrow(() -> BookRejected.of(field, "an unknown field", names(kind)));
          if (!rule.takes(value)) {
            throw BookRejected.of(field, value, rule.accepted());
          }
        });
  }

  private static String names(ShelfKind kind) {
    return String.join(", ", kind.fields().stream().map(FieldRule::name).toList());
  }

  /** Without the fields that say nothing. */
  private static Map<String, String> told(Map<String, String> fields) {
    Map<String, String> told = new TreeMap<>(fields);
    told.values().removeIf(String::isEmpty);
    return told;
  }

  private Checked<ShelfItem> balanced(Function<Handle, ShelfItem> work) {
    return BookRejected.caught(() -> connection.write(work));
  }
}
