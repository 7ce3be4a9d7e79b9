package trayward.host.session;

import java.util.Optional;

/** The moments of a print that are marked at the tray, in the order in which they come. */
public enum MarkKind {
  /** The sheet enters the developer. */
  IN("in"),
  /** The first blacks show. */
  EMERGENCE("emergence"),
  /** The sheet leaves the developer for the stop bath. */
  PULL("pull");

  private final String word;

  MarkKind(String word) {
    this.word = word;
  }

  /** The word for it in the log, on the page and in JSON. */
  public String word() {
    return word;
  }

  /** The kind of exactly this word, empty where there is none. */
  public static Optional<MarkKind> of(String word) {
    for (MarkKind kind : values()) {
      if (kind.word.equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
