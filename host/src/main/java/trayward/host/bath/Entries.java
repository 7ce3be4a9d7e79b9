package trayward.host.bath;

import java.util.Optional;

/** The checks that what a person enters about a bath goes through. */
final class Entries {

  private Entries() {}

  /** A name of 1 to {@code max} characters, not all blank. */
  static Optional<Problem> name(String field, String text, int max) {
    return text.isBlank() || text.length() > max
        ? Optional.of(new Problem(field, text, "1 to " + max + " characters"))
        : Optional.empty();
  }

  /** Free text, which may be empty. */
  static Optional<Problem> freeText(String field, String text, int max) {
    return text.length() > max
        ? Optional.of(new Problem(field, text, "at most " + max + " characters"))
        : Optional.empty();
  }

  /** A volume above 0, up to {@code max}; NaN is none. */
  static Optional<Problem> volume(String field, double volume, int max, String unit) {
    return volume > 0 && volume <= max
        ? Optional.empty()
        : Optional.of(
            new Problem(field, Double.toString(volume), "more than 0, up to " + max + " " + unit));
  }

  /** A volume of 0 up to {@code max}; NaN is none. */
  static Optional<Problem> volumeOrNone(String field, double volume, int max, String unit) {
    return volume == 0
        ? Optional.empty()
        : volume(field, volume, max, unit)
            .map(p -> new Problem(field, p.found(), "0 to " + max + " " + unit));
  }

  /** Throws where an entry that should have been checked first was not. */
  static void insist(Optional<Problem> problem) {
    problem.ifPresent(
        bad -> {
          throw new IllegalArgumentException(bad.field() + " takes " + bad.accepted());
        });
  }
}
