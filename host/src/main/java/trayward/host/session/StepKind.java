package trayward.host.session;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What is done with a print after the developer, in the usual order. */
public enum StepKind {
  /** Held over the tray until it drips no more. */
  DRAIN("drain"),
  /** The stop bath. */
  STOP("stop"),
  /** The fixer. */
  FIX("fix"),
  /** Water, or a washing aid. */
  WASH("wash"),
  /** A bleach, before a toner or a second development. */
  BLEACH("bleach"),
  /** A toner. */
  TONE("tone"),
  /** Dried, and how. */
  DRY("dry");

  private final String word;

  StepKind(String word) {
    this.word = word;
  }

  /** The word for it in the log and in JSON. */
  public String word() {
    return word;
  }

  /** The kind of exactly this word, empty where there is none. */
  public static Optional<StepKind> of(String word) {
    return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
  }

  /** All words, for a refusal. */
  public static String words() {
    return Arrays.stream(values()).map(StepKind::word).collect(Collectors.joining(", "));
  }

  /** The cautions that belong to it; none of them says that anything is harmless. */
  public List<StepCaution> cautions() {
    return StepCaution.of(this);
  }
}
