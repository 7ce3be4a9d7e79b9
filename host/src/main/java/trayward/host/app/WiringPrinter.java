package trayward.host.app;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import trayward.controller.app.WiringView;
import trayward.host.app.WiringItems.Item;

/** Prints a look at the wiring whole, and then only what changes, a line each. One thread. */
final class WiringPrinter {

  private final PrintStream out;
  private final Map<String, Item> printed = new LinkedHashMap<>();
  private long beganNanos;

  WiringPrinter(PrintStream out) {
    this.out = out;
  }

  /** Everything; times of changes count from here. */
  void whole(WiringView view, long nowNanos) {
    beganNanos = nowNanos;
    printed.clear();
    WiringItems.of(view)
        .forEach(
            (key, item) -> {
              out.println(key + " " + item.text());
              printed.put(key, item);
            });
    out.flush();
  }

  /** What has changed since it was printed. */
  void changes(WiringView view, long nowNanos) {
    Map<String, Item> now = WiringItems.of(view);
    List<String> lines = new ArrayList<>();
    now.forEach(
        (key, item) -> {
          Item before = printed.get(key);
          if (before == null || item.differs(before)) {
            lines.add(key + " " + item.text());
            printed.put(key, item);
          }
        });
    for (String key : List.copyOf(printed.keySet())) {
      if (!now.containsKey(key)) {
        lines.add(key + " gone");
        printed.remove(key);
      }
    }
    for (String line : lines) {
      double afterS = (nowNanos - beganNanos) / 1e9;
      out.println(String.format(Locale.ROOT, "%7.1f s  %s", afterS, line));
    }
    if (!lines.isEmpty()) {
      out.flush();
    }
  }
}
