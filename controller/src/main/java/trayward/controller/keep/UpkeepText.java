package trayward.controller.keep;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Upkeep as short lines of text closed by a CRC-32C, so that a person can read it and a torn or
 * altered file is noticed. Pure.
 */
final class UpkeepText {

  private static final String HEAD = "trayward-upkeep 1";

  /** A century of use: more was not written here. */
  private static final double MOST_S = 100.0 * 366 * 24 * 3600;

  private UpkeepText() {}

  static String write(Upkeep upkeep) {
    StringBuilder body = new StringBuilder(HEAD).append('\n');
    for (UpkeepItem item : UpkeepItem.values()) {
      body.append(item.path()).append('=');
      body.append(LocalDate.ofEpochDay(upkeep.last(item))).append('\n');
    }
    body.append("cartridge_s=").append(Math.round(upkeep.cartridgeS())).append('\n');
    body.append("fan_s=").append(Math.round(upkeep.fanS())).append('\n');
    return CheckSum.close(body.toString());
  }

  /** Empty where it is not what was written. */
  static Optional<Upkeep> read(String text) {
    Optional<String> body = CheckSum.open(text);
    if (body.isEmpty()) {
      return Optional.empty();
    }
    List<String> lines = body.get().lines().toList();
    UpkeepItem[] items = UpkeepItem.values();
    if (lines.size() != items.length + 3 || !lines.get(0).equals(HEAD)) {
      return Optional.empty();
    }
    try {
      Map<UpkeepItem, Long> days = new EnumMap<>(UpkeepItem.class);
      for (int i = 0; i < items.length; i++) {
        String date = value(lines.get(i + 1), items[i].path());
        days.put(items[i], LocalDate.parse(date).toEpochDay());
      }
      double cartridgeS = seconds(lines.get(items.length + 1), "cartridge_s");
      return Optional.of(
          new Upkeep(days, cartridgeS, seconds(lines.get(items.length + 2), "fan_s")));
    } catch (IllegalArgumentException | DateTimeException e) {
      return Optional.empty();
    }
  }

  private static double seconds(String line, String key) {
    long seconds = Long.parseLong(value(line, key));
    if (seconds < 0 || seconds > MOST_S) {
      throw new IllegalArgumentException(line);
    }
    return seconds;
  }

  private static String value(String line, String key) {
    if (!line.startsWith(key + "=")) {
      throw new IllegalArgumentException(line);
    }
    return line.substring(key.length() + 1);
  }
}
