package trayward.controller.port;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Which temperature a probe stands for. */
public enum ProbeRole {
  /** In the liquid; always fitted. */
  BATH,
  /** A second one in the liquid; optional. */
  SECOND_BATH,
  /** On the heated plate under the tray; optional. */
  PLATE;

  /** As configuration and interface call it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The role of a word. */
  public static Optional<ProbeRole> of(String word) {
    return Arrays.stream(values()).filter(role -> role.word().equals(word)).findFirst();
  }
}
