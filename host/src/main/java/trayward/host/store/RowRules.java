package trayward.host.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
import trayward.host.bath.Problem;
import trayward.host.session.FieldRule;
import trayward.host.session.PrintField;
import trayward.host.session.ShelfKind;

/** What a row of a table must be as a whole, by the rules of what it tells of. Stateless. */
final class RowRules {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final TypeReference<Map<String, String>> TEXTS = new TypeReference<>() {};

  private RowRules() {}

  static Optional<Problem> session(LogRow row) {
    return row.cell("ended_wall_ms").isEmpty() == row.text("ending").isEmpty()
        ? Optional.empty()
        : bad("ending", row.text("ending"), "an end with a word for it, or neither");
  }

  static Optional<Problem> mark(LogRow row) {
    return row.cell("undone_wall_ms").isEmpty() == (row.whole("undone") == 0)
        ? Optional.empty()
        : bad(
            "undone_wall_ms", found(row, "undone_wall_ms"), "a time where undone is 1, else none");
  }

  static Optional<Problem> bath(LogRow row) {
    return problem(
        Bath.check(
            row.whole("id"),
            Instant.ofEpochMilli(row.whole("made_wall_ms")),
            row.text("name"),
            row.real("litres").orElse(0),
            row.text("note")));
  }

  static Optional<Problem> entry(LogRow row) {
    EntryKind kind = EntryKind.of(row.text("kind")).orElseThrow();
    OptionalDouble celsius =
        row.cell("temperature_centi_c").isPresent()
            ? OptionalDouble.of(row.whole("temperature_centi_c") / 100.0)
            : OptionalDouble.empty();
    boolean other =
        switch (kind) {
          case CARRIED_OVER, TAKEN_OVER, PRINTED -> true;
          case POURED, POURED_AWAY, LEVEL_READ, EVAPORATED -> false;
        };
    return BookEntry.problem(
            kind,
            0,
            row.text("what"),
            row.text("dilution"),
            row.real("millilitres").orElse(0),
            celsius)
        .map(p -> p.field().equals("celsius") ? renamed(p, "temperature_centi_c") : p)
        .or(
            () ->
                other && row.cell("other").isEmpty()
                    ? bad("other", "nothing", "the bath or print that " + kind.word() + " tells of")
                    : Optional.empty());
  }

  private static Problem renamed(Problem p, String field) {
    return new Problem(field, p.found(), p.accepted());
  }

  static Optional<Problem> field(LogRow row) {
    FieldRule rule = PrintField.of(row.text("field")).orElseThrow().rule();
    return !row.text("value").isEmpty() && rule.takes(row.text("value"))
        ? Optional.empty()
        : bad("value", row.text("value"), rule.accepted() + ", not empty");
  }

  static Optional<Problem> step(LogRow row) {
    return problem(
        PrintSteps.read(
            row.text("kind"), "", row.text("dilution"), row.text("what"), Instant.EPOCH));
  }

  static Optional<Problem> picture(LogRow row) {
    return row.text("file").matches(PictureFiles.NAMES)
        ? Optional.empty()
        : bad("file", row.text("file"), "small letters, digits, hyphens, .jpg or .png");
  }

  static Optional<Problem> shelf(LogRow row) {
    if (row.text("name").isBlank()) {
      return bad("name", row.text("name"), "1 to 80 characters");
    }
    try {
      Map<String, String> fields = JSON.readValue(row.text("body"), TEXTS);
      ShelfKind kind = ShelfKind.of(row.text("kind")).orElseThrow();
      for (Map.Entry<String, String> told : fields.entrySet()) {
        Optional<FieldRule> rule =
            kind.fields().stream().filter(r -> r.name().equals(told.getKey())).findFirst();
        if (rule.isEmpty() || !rule.get().takes(told.getValue())) {
          return bad(
              "body",
              told.getKey() + " " + told.getValue(),
              rule.map(FieldRule::accepted).orElse("a field of " + kind.word()));
        }
      }
      return Optional.empty();
    } catch (JsonProcessingException e) {
      return bad("body", row.text("body"), "a JSON object of texts");
    }
  }

  private static String found(LogRow row, String column) {
    return row.cell(column).map(Object::toString).orElse("nothing");
  }

  private static Optional<Problem> problem(Checked<?> checked) {
    return checked instanceof Checked.Bad<?> bad ? Optional.of(bad.problem()) : Optional.empty();
  }

  private static Optional<Problem> bad(String field, String found, String accepted) {
    return Optional.of(new Problem(field, found, accepted));
  }
}
