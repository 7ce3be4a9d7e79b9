package trayward.host.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes {@code events.jsonl} of a rehearsal: one JSON object a line. One thread. */
public final class EventsJsonl implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Writer out;

  /** Begins a new file, replacing an old one. */
  public EventsJsonl(Path file) throws IOException {
    this.out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
  }

  /** Writes an event. */
  public void event(double tS, String kind, String subject, String detail) {
    ObjectNode node = JSON.createObjectNode();
    node.put("t_s", Math.round(tS * 10) / 10.0);
    node.put("kind", kind).put("subject", subject).put("detail", detail);
    try {
      out.write(JSON.writeValueAsString(node));
      out.write('\n');
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
