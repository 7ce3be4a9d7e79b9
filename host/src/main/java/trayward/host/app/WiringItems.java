package trayward.host.app;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import trayward.controller.app.WiringView;
import trayward.controller.port.Contact;
import trayward.controller.port.LineReadings;
import trayward.controller.sense.Reading;

/** A look at the wiring as lines of text, and what has changed since they were printed. Pure. */
final class WiringItems {

  /** A fan's speed is worth a new line when it has moved by so much, 1/min. */
  private static final double RPM_STEP = 100;

  /** A temperature likewise, K: well over noise and steps of a probe. */
  private static final double STEP_K = 0.25;

  /**
   * One line.
   *
   * @param what words that are compared whole
   * @param number a number that is compared by steps; NaN where there is none
   * @param step smallest change worth telling
   * @param rest what never changes while it is there
   */
  record Item(String what, double number, double step, String rest) {

    boolean differs(Item printed) {
      return !what.equals(printed.what) || Math.abs(number - printed.number) >= step;
    }

    String text() {
      boolean whole = step == RPM_STEP;
      String shown =
          Double.isNaN(number)
              ? what
              : whole
                  ? String.format(Locale.ROOT, "%.0f %s", number, what)
                  : String.format(Locale.ROOT, "%s %.2f °C", what, number);
      return rest.isEmpty() ? shown : String.format(Locale.ROOT, "%-44s %s", rest, shown);
    }
  }

  private WiringItems() {}

  /** Every input, every configured probe, every probe on the bus. */
  static Map<String, Item> of(WiringView view) {
    Map<String, Item> items = new LinkedHashMap<>();
    LineReadings in = view.lines();
    input(items, in, "airflow", in.airflow() ? "present" : "absent");
    items.put(
        key("input", "fan_rpm"),
        in.present()
            ? new Item("1/min", in.fanRpm(), RPM_STEP, "")
            : new Item("no answer", Double.NaN, 1, ""));
    input(items, in, "stop_circuit", in.stopCircuitClosed() ? "whole" : "open (stop is pressed)");
    input(items, in, "reset_button", button(in.resetButton()));
    input(items, in, "presence_button", button(in.presenceButton()));
    input(items, in, "pedal", button(in.pedal()));
    input(items, in, "start_button", button(in.startButton()));
    input(items, in, "heater_contact", contact(in.heaterContact()));
    input(items, in, "safety_contact", contact(in.safetyContact()));
    for (WiringView.Probe probe : view.probes()) {
      items.put(key("probe", probe.role().word()), item(probe.reading(), probe.name()));
    }
    for (WiringView.Found found : view.found()) {
      String rest =
          String.format(
              Locale.ROOT,
              "rom %s crc %02x %s",
              found.id().whole(),
              found.id().crc(),
              found.role().map(role -> "is " + role.word()).orElse("not configured"));
      items.put(key("found", found.id().folder()), item(found.reading(), rest));
    }
    return items;
  }

  private static Item item(Reading reading, String rest) {
    return new Item(reading.kind().name(), reading.celsius(), STEP_K, rest);
  }

  private static void input(Map<String, Item> items, LineReadings in, String name, String value) {
    String words = in.present() ? value : "no answer";
    items.put(key("input", name), new Item(words, Double.NaN, 1, ""));
  }

  private static String key(String kind, String name) {
    return String.format(Locale.ROOT, "%-7s %-16s", kind, name);
  }

  private static String button(boolean down) {
    return down ? "down" : "up";
  }

  private static String contact(Contact contact) {
    return switch (contact) {
      case NOT_WIRED -> "not wired";
      case OPEN -> "open";
      case CLOSED -> "closed";
    };
  }
}
