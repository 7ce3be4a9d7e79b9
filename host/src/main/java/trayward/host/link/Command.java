package trayward.host.link;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a person may ask of the controller. */
public enum Command {
  /** Heat off. */
  STOP,
  /** Begin proving. */
  START,
  /** The alarm has been seen. */
  ACKNOWLEDGE,
  /** Leave the lockout. */
  RESET,
  /** Somebody is here. */
  PRESENCE;

  /** The word in the interface's addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The command of a word. */
  public static Optional<Command> of(String word) {
    return Arrays.stream(values()).filter(c -> c.word().equals(word)).findFirst();
  }
}
