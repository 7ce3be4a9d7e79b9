package trayward.host.session;

import java.util.Map;
import java.util.Optional;

/**
 * One thing on the person's shelf. Immutable.
 *
 * @param id id in the log, counts from 1
 * @param kind what it is
 * @param name what the person calls it, 1 to {@value #NAME_MAX} characters
 * @param fields what is told of it, by name of field; numbers as text
 */
public record ShelfItem(long id, ShelfKind kind, String name, Map<String, String> fields) {

  /** Longest name: one line of a page. */
  public static final int NAME_MAX = 80;

  /** Copies the fields. */
  public ShelfItem {
    fields = Map.copyOf(fields);
  }

  /** What is told in a field; empty where nothing. */
  public Optional<String> text(String field) {
    return Optional.ofNullable(fields.get(field)).filter(t -> !t.isEmpty());
  }

  /** A number told in a field, or another where there is none. */
  public double number(String field, double otherwise) {
    return text(field).map(FieldRule::numberOf).orElse(otherwise);
  }
}
