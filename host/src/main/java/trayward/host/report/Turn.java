package trayward.host.report;

import java.util.OptionalDouble;

/**
 * A point of a rehearsal from which the bath's course is measured anew.
 *
 * @param tS when, s
 * @param word {@code heat} for the first permitted heat, else the entry that disturbed it
 * @param setLowered the set temperature was lowered
 * @param boundS the time-optimal way into the band from here, s
 */
public record Turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {

  /** Entries whose recovery is reported. */
  boolean recovers() {
    return switch (word) {
      case "pour", "sheet", "set-temperature", "cover", "uncover" -> true;
      default -> false;
    };
  }
}
