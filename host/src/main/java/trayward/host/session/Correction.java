package trayward.host.session;

import java.time.Instant;
import java.util.Arrays;

/**
 * That something was entered otherwise before. Immutable.
 *
 * @param wall when it was corrected, wall-clock time, for the record only
 * @param thing what sort of thing it is of
 * @param thingId its id in the log; of a print its number
 * @param field which field of it
 * @param was what stood there; empty for nothing
 * @param became what stands there since; empty for nothing
 */
public record Correction(
    Instant wall, Thing thing, long thingId, String field, String was, String became) {

  /** What can be corrected. */
  public enum Thing {
    /** A print, its marks, steps and pictures too. */
    PRINT("print"),
    /** A session. */
    SESSION("session"),
    /** A bath. */
    BATH("bath"),
    /** A line of the bath book. */
    ADDITION("addition"),
    /** Something on the shelf. */
    SHELF("shelf");

    private final String word;

    Thing(String word) {
      this.word = word;
    }

    /** The word for it in the log. */
    public String word() {
      return word;
    }

    /** The thing of exactly this word. */
    public static Thing of(String word) {
      return Arrays.stream(values()).filter(t -> t.word.equals(word)).findFirst().orElseThrow();
    }
  }
}
