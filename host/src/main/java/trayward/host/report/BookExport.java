package trayward.host.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import trayward.host.session.Session;
import trayward.host.store.BookArchive;

/**
 * Baths, shelf and sessions of the log as files: {@code baths.json}, {@code shelf.json}, {@code
 * sessions.json}. Of a bath its lines are written, not what they amount to: that follows from them.
 * Stateless.
 */
public final class BookExport {

  private static final ObjectMapper JSON = new ObjectMapper();

  private BookExport() {}

  /**
   * Writes all three; gives how many baths there were.
   *
   * @param symptoms what was felt in a session, in the person's own words
   */
  public static int write(
      Path folder, BookArchive books, List<Session> sessions, Function<Session, String> symptoms)
      throws IOException {
    Files.createDirectories(folder);
    ArrayNode baths = JSON.createArrayNode();
    for (BookArchive.Pages pages : books.baths()) {
      ObjectNode one = baths.addObject();
      one.put("id", pages.bath().id()).put("made", pages.bath().madeWall().toString());
      one.put("name", pages.bath().name()).put("litres", pages.bath().litres());
      one.put("note", pages.bath().note());
      ArrayNode book = one.putArray("book");
      pages.entries().forEach(e -> BookJson.entry(book.addObject(), e));
      EntriesJson.history(one, pages.history());
    }
    ArrayNode shelf = JSON.createArrayNode();
    for (BookArchive.Shelved shelved : books.shelf()) {
      ObjectNode one = shelf.addObject();
      BookJson.item(one, shelved.item());
      shelved.gone().ifPresent(at -> one.put("taken_off", at.toString()));
      EntriesJson.history(one, shelved.history());
    }
    ArrayNode sittings = JSON.createArrayNode();
    for (Session session : sessions) {
      ObjectNode one = sittings.addObject();
      one.put("id", session.id()).put("started", session.startedWall().toString());
      one.put("ended", session.endedWall().map(Object::toString).orElse(null));
      one.put("ending", session.ending()).put("simulated", session.simulated());
      one.put("symptoms", symptoms.apply(session));
    }
    write(folder.resolve("baths.json"), baths);
    write(folder.resolve("shelf.json"), shelf);
    write(folder.resolve("sessions.json"), sittings);
    return baths.size();
  }

  private static void write(Path file, ArrayNode node) throws IOException {
    Files.writeString(file, JSON.writerWithDefaultPrettyPrinter().writeValueAsString(node) + "\n");
  }
}
