package trayward.controller.keep;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import trayward.controller.event.TripCause;

/**
 * The record as eight short lines of text closed by a CRC-32C, so that a person can read it and a
 * torn or altered file is noticed. Pure.
 */
final class KeepText {

  private static final String HEAD = "trayward-keep 2";

  /** The version before wear was counted: five lines instead of seven. */
  private static final String OLD_HEAD = "trayward-keep 1";

  private KeepText() {}

  static String write(KeepRecord record) {
    String body =
        HEAD
            + "\nlatched="
            + record.latched().stream().map(Enum::name).collect(Collectors.joining(","))
            + "\nfirst_out="
            + record.firstOut().map(Enum::name).orElse("")
            + "\nacknowledged="
            + record.acknowledged()
            + "\nheat_in_progress="
            + record.heatInProgress()
            + "\nheater_closings="
            + record.wear().heaterClosings()
            + "\nsafety_closings="
            + record.wear().safetyClosings()
            + "\n";
    return CheckSum.close(body);
  }

  static KeepLoad read(String text) {
    Optional<String> body = CheckSum.open(text);
    if (body.isEmpty()) {
      return new KeepLoad.Unreadable("its check sum is wrong");
    }
    List<String> lines = body.get().lines().toList();
    try {
      boolean old = lines.size() == 5 && lines.get(0).equals(OLD_HEAD);
      if (!old && !(lines.size() == 7 && lines.get(0).equals(HEAD))) {
        return new KeepLoad.Unreadable("it is not a record of this version");
      }
      EnumSet<TripCause> latched = EnumSet.noneOf(TripCause.class);
      String names = value(lines.get(1), "latched");
      if (!names.isEmpty()) {
        for (String name : names.split(",", -1)) {
          latched.add(TripCause.valueOf(name));
        }
      }
      String first = value(lines.get(2), "first_out");
      return new KeepLoad.Loaded(
          new KeepRecord(
              latched,
              first.isEmpty() ? Optional.empty() : Optional.of(TripCause.valueOf(first)),
              flag(lines.get(3), "acknowledged"),
              flag(lines.get(4), "heat_in_progress"),
              old ? RelayWear.NONE : wear(lines)));
    } catch (IllegalArgumentException e) {
      return new KeepLoad.Unreadable("it holds a value that is not known: " + e.getMessage());
    }
  }

  private static RelayWear wear(List<String> lines) {
    return new RelayWear(
        Long.parseLong(value(lines.get(5), "heater_closings")),
        Long.parseLong(value(lines.get(6), "safety_closings")));
  }

  private static boolean flag(String line, String key) {
    String value = value(line, key);
    return switch (value) {
      case "true" -> true;
      case "false" -> false;
      default -> throw new IllegalArgumentException(key + "=" + value);
    };
  }

  private static String value(String line, String key) {
    if (!line.startsWith(key + "=")) {
      throw new IllegalArgumentException(line);
    }
    return line.substring(key.length() + 1);
  }
}
