package trayward.controller.gpio;

import com.pi4j.io.gpio.digital.PullResistance;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The resistor inside the chip that holds an input where nothing drives it. */
public enum Pull {
  /** To the supply of the chip: an open contact reads high. */
  UP(PullResistance.PULL_UP),
  /** To ground: an open contact reads low. */
  DOWN(PullResistance.PULL_DOWN),
  /** None: there must be one outside, or the line reads anything. */
  OFF(PullResistance.OFF);

  private final PullResistance resistance;

  Pull(PullResistance resistance) {
    this.resistance = resistance;
  }

  PullResistance resistance() {
    return resistance;
  }

  /** As a configuration calls it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The pull of a word. */
  public static Optional<Pull> of(String word) {
    return Arrays.stream(values()).filter(pull -> pull.word().equals(word)).findFirst();
  }

  /** Every word. */
  public static List<String> words() {
    return Arrays.stream(values()).map(Pull::word).toList();
  }
}
