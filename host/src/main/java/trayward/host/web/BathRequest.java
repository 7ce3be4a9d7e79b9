package trayward.host.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.Dilution;
import trayward.host.bath.EntryKind;
import trayward.host.bath.Problem;
import trayward.host.session.ShelfItem;
import trayward.host.session.ShelfKind;

/** Reads what a person says about a bath. Stateless. */
final class BathRequest {

  private static final List<String> PART =
      List.of("kind", "what", "millilitres", "dilution", "celsius", "from", "at", "confirmed");

  private static final String KINDS = "poured, carried-over, poured-away or level-read";

  /** Most parts of a make-up: two of developer, water, some salts, what was kept. */
  private static final int PARTS_MAX = 20;

  private BathRequest() {}

  static List<String> fields() {
    return PART;
  }

  /** A line of a bath's book. */
  static BookEntry entry(ObjectNode body, long bath, Instant now, double sessionS) {
    EntryKind kind = kind(body);
    String what =
        kind == EntryKind.POURED
            ? Json.text(body, "what", "what was poured in")
            : optionalText(body, "what");
    double ml = Json.number(body, "millilitres", "millilitres above 0");
    String dilution = optionalText(body, "dilution");
    OptionalDouble celsius = optionalNumber(body, "celsius", "0 to 100 °C");
    Optional<Problem> wrong = BookEntry.problem(kind, sessionS, what, dilution, ml, celsius);
    if (wrong.isPresent()) {
      throw Refused.problem(wrong.get());
    }
    Instant at = body.has("at") ? instant(body) : now;
    BookEntry poured =
        new BookEntry(
            0,
            bath,
            at,
            body.has("at") ? Double.NaN : sessionS,
            kind,
            what.strip(),
            dilution,
            ml,
            OptionalLong.empty(),
            celsius,
            0,
            0);
    return poured.as(kind, kind == EntryKind.CARRIED_OVER ? from(body) : OptionalLong.empty());
  }

  /** The same line as a correction of it says it should be. */
  static Checked<BookEntry> corrected(ObjectNode body, BookEntry was) {
    String what = body.has("what") ? Json.text(body, "what", "a text") : was.what();
    String dilution = body.has("dilution") ? Json.text(body, "dilution", "a text") : was.dilution();
    double ml =
        body.has("millilitres")
            ? Json.number(body, "millilitres", "millilitres above 0")
            : was.millilitres();
    OptionalDouble celsius =
        body.has("celsius") ? optionalNumber(body, "celsius", "0 to 100 °C") : was.celsius();
    Optional<Problem> wrong =
        BookEntry.problem(was.kind(), was.sessionS(), what, dilution, ml, celsius);
    return wrong.isPresent()
        ? new Checked.Bad<>(wrong.get())
        : new Checked.Good<>(
            was.of(what.strip()).holding(ml).with(dilution, celsius).as(was.kind(), was.other()));
  }

  private static EntryKind kind(ObjectNode body) {
    if (!body.has("kind")) {
      return body.has("from") ? EntryKind.CARRIED_OVER : EntryKind.POURED;
    }
    String word = Json.text(body, "kind", KINDS);
    return EntryKind.of(word)
        .filter(EntryKind::entered)
        .orElseThrow(() -> Refused.field("kind", word, KINDS));
  }

  private static OptionalLong from(ObjectNode body) {
    JsonNode from = body.get("from");
    if (from == null || !from.isIntegralNumber()) {
      throw Refused.field(
          "from", from == null ? "nothing" : from.toString(), "the id of the bath it was kept of");
    }
    return OptionalLong.of(from.longValue());
  }

  private static Instant instant(ObjectNode body) {
    String text = Json.text(body, "at", "a time such as 2026-03-01T20:00:00Z");
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      throw Refused.field("at", text, "a time such as 2026-03-01T20:00:00Z");
    }
  }

  static String optionalText(ObjectNode body, String field) {
    return body.has(field) ? Json.text(body, field, "a text") : "";
  }

  private static OptionalDouble optionalNumber(ObjectNode body, String field, String accepted) {
    return body.hasNonNull(field)
        ? OptionalDouble.of(Json.number(body, field, accepted))
        : OptionalDouble.empty();
  }

  /** What a new bath is made of. */
  record MakeUp(double litres, List<BookEntry> parts) {}

  /**
   * Litres with nothing told; or litres at a dilution of concentrates; or one of the shelf's
   * make-ups; and in each case more parts, in order.
   */
  static MakeUp makeUp(
      ObjectNode body, Instant now, double sessionS, Optional<ShelfItem> fromShelf) {
    double litres = optionalNumber(body, "litres", "0 to 20 L").orElse(0);
    String dilution = optionalText(body, "dilution");
    List<String> concentrates = names(body);
    if (fromShelf.isPresent()) {
      ShelfItem made = fromShelf.get();
      litres = litres > 0 ? litres : made.number("litres", 0);
      dilution = dilution.isEmpty() ? made.text("dilution").orElse("") : dilution;
      concentrates =
          concentrates.isEmpty()
              ? List.of(made.text("concentrates").orElse("").split(" *, *"))
              : concentrates;
    }
    List<BookEntry> parts = new ArrayList<>();
    if (!dilution.isEmpty() || !concentrates.isEmpty()) {
      parts.addAll(diluted(litres, dilution, concentrates, now, sessionS));
      litres = 0;
    }
    parts.addAll(parts(body, now, sessionS));
    return new MakeUp(litres, parts);
  }

  static List<String> fieldsOfMakeUp() {
    return List.of(
        "name", "litres", "note", "dilution", "concentrates", "make_up", "parts", "confirmed");
  }

  /** The shelf's make-up that is asked for. */
  static Optional<Long> fromShelf(ObjectNode body) {
    JsonNode id = body.get("make_up");
    if (id == null || id.isNull()) {
      return Optional.empty();
    }
    if (!id.isIntegralNumber()) {
      throw Refused.field("make_up", id.toString(), "the id of a make-up on the shelf");
    }
    return Optional.of(id.longValue());
  }

  static void insistMakeUp(Optional<ShelfItem> item, long id) {
    if (item.filter(i -> i.kind() == ShelfKind.MAKE_UP).isEmpty()) {
      throw Refused.field("make_up", Long.toString(id), "the id of a make-up on the shelf");
    }
  }

  private static List<BookEntry> diluted(
      double litres, String dilution, List<String> names, Instant now, double sessionS) {
    if (!(litres > 0)) {
      throw Refused.field("litres", Double.toString(litres), "more than 0, up to 20 L");
    }
    Checked<Dilution> checked = Dilution.read("dilution", dilution);
    if (!(checked instanceof Checked.Good<Dilution> good)) {
      throw Refused.problem(((Checked.Bad<Dilution>) checked).problem());
    }
    Dilution d = good.value();
    if (names.size() != d.concentrates().size()) {
      throw Refused.field(
          "concentrates",
          String.join(", ", names),
          d.concentrates().size() + " names, one for each part before the water of " + d.words());
    }
    List<BookEntry> parts = new ArrayList<>();
    double water = 1000 * litres;
    for (int i = 0; i < names.size(); i++) {
      double ml = 1000 * litres * d.share(i);
      water -= ml;
      parts.add(poured(names.get(i), ml, now, sessionS));
    }
    if (water > 0.01) {
      parts.addAll(inJugs("water", water, now, sessionS));
    }
    return parts;
  }

  /** A volume that no jug holds is poured in several. */
  private static List<BookEntry> inJugs(String what, double ml, Instant now, double sessionS) {
    int jugs = (int) Math.ceil(ml / BookEntry.MILLILITRES_MAX);
    List<BookEntry> parts = new ArrayList<>();
    for (int i = 0; i < jugs; i++) {
      parts.add(poured(what, ml / jugs, now, sessionS));
    }
    return parts;
  }

  private static BookEntry poured(String what, double ml, Instant now, double sessionS) {
    Optional<Problem> wrong =
        BookEntry.problem(EntryKind.POURED, sessionS, what, "", ml, OptionalDouble.empty());
    if (wrong.isPresent()) {
      throw Refused.problem(wrong.get());
    }
    return BookEntry.poured(0, 0, now, sessionS, what, ml);
  }

  private static List<String> names(ObjectNode body) {
    JsonNode list = body.get("concentrates");
    if (list == null || list.isNull()) {
      return List.of();
    }
    List<String> names = new ArrayList<>();
    if (!list.isArray() || list.size() > PARTS_MAX) {
      throw Refused.field("concentrates", list.toString(), "a list of names");
    }
    for (JsonNode one : list) {
      if (!one.isTextual()) {
        throw Refused.field("concentrates", one.toString(), "a list of names");
      }
      names.add(one.textValue());
    }
    return names;
  }

  private static List<BookEntry> parts(ObjectNode body, Instant now, double sessionS) {
    JsonNode list = body.get("parts");
    if (list == null || list.isNull()) {
      return List.of();
    }
    if (!list.isArray() || list.size() > PARTS_MAX) {
      throw Refused.field("parts", list.toString(), "a list of at most " + PARTS_MAX + " parts");
    }
    List<BookEntry> parts = new ArrayList<>();
    for (JsonNode one : list) {
      if (!(one instanceof ObjectNode part)) {
        throw Refused.field("parts", one.toString(), "an object with what and millilitres");
      }
      part.fieldNames()
          .forEachRemaining(
              name -> {
                if (!PART.contains(name)) {
                  throw Refused.field(name, "an unknown field", String.join(", ", PART));
                }
              });
      parts.add(entry(part, 0, now, sessionS));
    }
    return parts;
  }
}
