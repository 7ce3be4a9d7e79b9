package trayward.host.app;

import java.io.PrintStream;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import trayward.controller.app.Settings;
import trayward.controller.app.WarmProbe;
import trayward.controller.app.WiringView;
import trayward.controller.onewire.RomId;
import trayward.controller.port.ProbeRole;

/** Which probe is which: the person warms one in the hand. One thread. */
final class WarmStep {

  /** A hand needs a minute at the most, s. */
  private static final int WAIT_S = 120;

  /** More probes than this nobody sorts at a tray. */
  private static final int MOST_PROBES = 20;

  private final PrintStream out;
  private final Terminal terminal;
  private final Pace pace;
  private final Supplier<WiringView> look;

  WarmStep(PrintStream out, Terminal terminal, Pace pace, Supplier<WiringView> look) {
    this.out = out;
    this.terminal = terminal;
    this.pace = pace;
    this.look = look;
  }

  void run(Settings settings, int seconds) {
    if (settings.io() instanceof Settings.Io.Sim) {
      say("a simulated probe cannot be warmed by hand");
      return;
    }
    if (!terminal.attended()) {
      var unused = found(seconds > 0 ? seconds : WAIT_S);
      return;
    }
    for (int i = 0; i < MOST_PROBES; i++) {
      say("let all probes hang, press Enter, then take one of them in your hand; q to quit");
      if (terminal.line().map(String::trim).filter(s -> !s.equalsIgnoreCase("q")).isEmpty()) {
        return;
      }
      Optional<WarmProbe.Named> named = found(WAIT_S);
      if (named.isPresent() && !placed(named.get().name())) {
        return;
      }
    }
  }

  private Optional<WarmProbe.Named> found(int seconds) {
    WarmProbe warm = WarmProbe.START;
    long began = pace.nanos();
    while (warm.found().isEmpty() && (pace.nanos() - began) / 1e9 < seconds) {
      Map<String, Double> celsius = look.get().temperatures();
      warm = warm.next(celsius, pace.nanos());
    }
    Optional<WarmProbe.Named> named = warm.found();
    if (named.isEmpty()) {
      say("no probe has risen by " + WarmProbe.LEAST_K + " K and clearly more than the others");
      warm.rises().entrySet().stream()
          .sorted(Map.Entry.comparingByKey())
          .forEach(
              e -> say(String.format(Locale.ROOT, "%s rose by %.2f K", e.getKey(), e.getValue())));
      return named;
    }
    WarmProbe.Named it = named.get();
    say(
        String.format(
            Locale.ROOT,
            "it is %s%s, %s: it rose by %.2f K, the next by %.2f K",
            it.name(),
            RomId.ofFolder(it.name()).map(id -> ", rom " + id.whole()).orElse(""),
            place(it.name()),
            it.riseK(),
            it.nextK()));
    return named;
  }

  private String place(String name) {
    return look.get().probes().stream()
        .filter(probe -> probe.name().equals(name))
        .map(probe -> "configured as " + probe.role().word())
        .findFirst()
        .orElse("not configured");
  }

  /** Whether the person goes on. */
  private boolean placed(String name) {
    for (ProbeRole role : ProbeRole.values()) {
      say("is it the probe for " + role.word() + "? y or n");
      Optional<String> said = terminal.line().map(String::trim);
      if (said.isEmpty()) {
        return false;
      }
      if (said.get().toLowerCase(Locale.ROOT).startsWith("y")) {
        String value = RomId.ofFolder(name).isPresent() ? name : "transmitter";
        say("this line belongs under [probes]:");
        out.println(role.word() + " = \"" + value + "\"");
        out.flush();
        return true;
      }
    }
    return true;
  }

  private void say(String words) {
    out.println("warm    " + words);
    out.flush();
  }
}
