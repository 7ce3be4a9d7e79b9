package trayward.host.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.Vapour;
import trayward.host.link.LinkAnswer;
import trayward.host.link.TrayLink;
import trayward.host.session.ShelfItem;
import trayward.host.store.BathBook;
import trayward.host.store.Shelf;
import trayward.host.store.TrayLog;

/** The bath book. What is poured into the tray is told to the controller too. Any thread. */
final class BathApi {

  private static final String NO_AIR =
      "air is not proven, and what is poured is above 30 °C: start the fan, wait until it is"
          + " proven, then pour; if it is in the tray already, cover it, leave and air the room";

  private final TrayLog log;
  private final BathBook book;
  private final Shelf shelf;
  private final Logbook logbook;
  private final TrayLink link;
  private final Clock clock;

  BathApi(TrayLog log, Logbook logbook, TrayLink link, Clock clock) {
    this.log = log;
    this.book = log.baths();
    this.shelf = log.shelf();
    this.logbook = logbook;
    this.link = link;
    this.clock = clock;
  }

  void routes(RoutesConfig routes) {
    routes.get("/api/baths", this::list);
    routes.post("/api/baths", this::make);
    routes.get("/api/baths/{id}", ctx -> answer(ctx, 200, known(Json.id(ctx))));
    routes.patch("/api/baths/{id}", this::rename);
    routes.post("/api/baths/{id}/additions", this::add);
    routes.patch("/api/baths/{id}/additions/{entry}", this::correct);
    routes.delete("/api/baths/{id}/additions/{entry}", this::takeBack);
    routes.get("/api/in-tray", this::inTray);
    routes.put("/api/in-tray", this::putInTray);
  }

  private BathBook.Now now() {
    return new BathBook.Now(clock.instant(), logbook.sessionS().orElse(Double.NaN));
  }

  private void list(Context ctx) {
    ArrayNode list = Json.MAPPER.createArrayNode();
    int limit = Json.query(ctx, "limit", 100, 1000);
    int offset = Json.query(ctx, "offset", 0, 100_000_000);
    Instant now = clock.instant();
    book.newestFirst(limit, offset).forEach(w -> list.add(BathJson.bath(w, now, this::name)));
    Json.answer(ctx, 200, list);
  }

  private String name(long id) {
    return log.bath(id).map(Bath::name).orElse("");
  }

  private void answer(Context ctx, int status, BathBook.Whole whole) {
    Json.answer(ctx, status, BathJson.whole(whole, clock.instant(), this::name));
  }

  private BathBook.Whole known(long id) {
    return book.whole(id).orElseThrow(() -> Refused.missing("no bath " + id));
  }

  private void make(Context ctx) {
    ObjectNode body = Json.body(ctx, BathRequest.fieldsOfMakeUp());
    BathBook.Now now = now();
    Optional<Long> wanted = BathRequest.fromShelf(body);
    Optional<ShelfItem> item = wanted.flatMap(shelf::item);
    wanted.ifPresent(id -> BathRequest.insistMakeUp(item, id));
    BathRequest.MakeUp makeUp = BathRequest.makeUp(body, now.wall(), now.sessionS(), item);
    for (BookEntry part : makeUp.parts()) {
      refuseStillAir(part, Json.confirmed(body));
    }
    answer(
        ctx,
        201,
        good(
            book.make(
                now,
                Json.text(body, "name", "1 to " + Bath.NAME_MAX + " characters"),
                makeUp.litres(),
                BathRequest.optionalText(body, "note"),
                makeUp.parts())));
  }

  private void rename(Context ctx) {
    long id = known(Json.id(ctx)).bath().id();
    ObjectNode body = Json.body(ctx, List.of("name", "note"));
    answer(ctx, 200, good(book.rename(now(), id, optional(body, "name"), optional(body, "note"))));
  }

  private static Optional<String> optional(ObjectNode body, String field) {
    return body.has(field) ? Optional.of(Json.text(body, field, "a text")) : Optional.empty();
  }

  private void add(Context ctx) {
    BathBook.Whole bath = known(Json.id(ctx));
    ObjectNode body = Json.body(ctx, BathRequest.fields());
    BathBook.Now now = now();
    BookEntry entry = BathRequest.entry(body, bath.bath().id(), now.wall(), now.sessionS());
    refuseStillAir(entry, Json.confirmed(body));
    BookEntry made = good(book.enter(now, entry));
    ObjectNode node = BathJson.addition(made);
    if (bath.inTray() && !body.has("at")) {
      told(made).ifPresent(answer -> node.put("controller", answer));
    }
    if (hot(entry) && !airProven()) {
      node.put("warning", NO_AIR);
    }
    Json.answer(ctx, 201, node);
  }

  /** SR-27: air must be proven for hot liquid poured in as for heat; a confirmed fact is kept. */
  private void refuseStillAir(BookEntry entry, boolean confirmed) {
    if (hot(entry) && !airProven() && !confirmed) {
      throw Refused.confirmFirst(NO_AIR);
    }
  }

  private static boolean hot(BookEntry entry) {
    return entry.celsius().orElse(0) > Vapour.HOT_C;
  }

  private boolean airProven() {
    return link.latest().filter(s -> s.fanProven()).isPresent();
  }

  /**
   * What the controller said to it; empty where it need not know. While off a bath is being made
   * up, and the controller reckons from what is declared or confirmed, not from every jug.
   */
  private Optional<String> told(BookEntry entry) {
    boolean off = link.latest().filter(s -> s.state().equals("OFF")).isPresent();
    double litres = entry.millilitres() / 1000;
    Optional<LinkAnswer> answer =
        switch (entry.kind()) {
          case POURED, CARRIED_OVER -> off ? Optional.empty() : Optional.of(link.topUp(litres));
          case LEVEL_READ -> Optional.of(link.confirmLevel(OptionalDouble.of(litres)));
          case POURED_AWAY, TAKEN_OVER, EVAPORATED, PRINTED -> Optional.empty();
        };
    return answer.map(a -> a instanceof LinkAnswer.Refused r ? "refused: " + r.reason() : "told");
  }

  private void correct(Context ctx) {
    long bath = known(Json.id(ctx)).bath().id();
    ObjectNode body = Json.body(ctx, List.of("what", "millilitres", "dilution", "celsius"));
    good(
        book.correct(
            now(), bath, Json.number(ctx, "entry"), was -> BathRequest.corrected(body, was)));
    answer(ctx, 200, known(bath));
  }

  private void takeBack(Context ctx) {
    long bath = known(Json.id(ctx)).bath().id();
    good(book.takeBack(now(), bath, Json.number(ctx, "entry")));
    answer(ctx, 200, known(bath));
  }

  private void inTray(Context ctx) {
    ObjectNode node = Json.MAPPER.createObjectNode();
    Optional<BathBook.Whole> bath = book.inTray().flatMap(b -> book.whole(b.id()));
    if (bath.isPresent()) {
      node.set("bath", BathJson.bath(bath.get(), clock.instant(), this::name));
    } else {
      node.putNull("bath");
    }
    node.set("again", again());
    Json.put(
        node, "controller_litres", link.latest().map(s -> s.level().litres()).orElse(Double.NaN));
    Json.answer(ctx, 200, node);
  }

  /** What was poured in of late, so that it is poured again by two taps. */
  private ArrayNode again() {
    ArrayNode list = Json.MAPPER.createArrayNode();
    for (BookEntry e : book.pouredOfLate()) {
      ObjectNode one = list.addObject();
      one.put("what", e.what()).put("dilution", e.dilution());
      Json.put(one, "millilitres", e.millilitres());
    }
    return list;
  }

  private void putInTray(Context ctx) {
    ObjectNode body = Json.body(ctx, List.of("bath"));
    JsonNode id = body.get("bath");
    if (id == null || !(id.isNull() || id.isIntegralNumber())) {
      throw Refused.field(
          "bath", id == null ? "nothing" : id.toString(), "the id of a bath, or null");
    }
    good(
        book.putInTray(
            now(), id.isNull() ? OptionalLong.empty() : OptionalLong.of(id.longValue())));
    inTray(ctx);
  }

  static <T> T good(Checked<T> checked) {
    if (checked instanceof Checked.Good<T> good) {
      return good.value();
    }
    throw Refused.problem(((Checked.Bad<T>) checked).problem());
  }
}
