package trayward.host.bath;

import java.util.Arrays;
import java.util.Optional;

/** What a line of the bath book tells of. */
public enum EntryKind {
  /** Water, a concentrate or a stock solution was poured in. */
  POURED("poured"),
  /** Used developer of an earlier bath was poured in. */
  CARRIED_OVER("carried-over"),
  /** Some of it went into a later bath. */
  TAKEN_OVER("taken-over"),
  /** Some of it was poured away. */
  POURED_AWAY("poured-away"),
  /** A person read how much the tray holds. */
  LEVEL_READ("level-read"),
  /** It stood in the tray: water went as vapour. */
  EVAPORATED("evaporated"),
  /** A sheet went in. */
  PRINTED("printed");

  private final String word;

  EntryKind(String word) {
    this.word = word;
  }

  /** The word for it in the log and in JSON. */
  public String word() {
    return word;
  }

  /** Whether a person enters it; the others are worked out. */
  public boolean entered() {
    return switch (this) {
      case POURED, CARRIED_OVER, POURED_AWAY, LEVEL_READ -> true;
      case TAKEN_OVER, EVAPORATED, PRINTED -> false;
    };
  }

  /** The kind of exactly this word; empty where there is none. */
  public static Optional<EntryKind> of(String word) {
    return Arrays.stream(values()).filter(k -> k.word.equals(word)).findFirst();
  }
}
