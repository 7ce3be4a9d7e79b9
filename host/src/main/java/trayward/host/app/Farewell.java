package trayward.host.app;

import java.io.PrintStream;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import trayward.controller.app.Settings;
import trayward.controller.quantity.Range;
import trayward.controller.safety.Limit;
import trayward.host.link.TrayStatus;

/** What a program that holds a tray says at its beginning and its end. Stateless. */
final class Farewell {

  private Farewell() {}

  /** The cautions, at every start (SR-25). */
  static void cautions(PrintStream out) {
    out.println(
        "Software only withholds heat. Required beside it: a ground-fault breaker, an independent");
    out.println(
        "thermal cut-out, a hard-wired airflow contact and a hard-wired stop. A filter mask is no");
    out.println("interlock. Mains wiring belongs to a licensed person under local codes.");
    out.println("Ctrl-C ends it with heat off.");
    out.flush();
  }

  /** The controller has ended: heat is off, and what the fan line does now (SR-21). */
  static void heatIsOff(PrintStream out, Settings settings, Optional<TrayStatus> last) {
    double warmC = settings.limits().get(Limit.WARM_C); // above it, moving air is wanted
    out.println();
    out.println("Heat is off.");
    last.filter(s -> s.fanCommanded() && !(s.bathC() < warmC))
        .ifPresent(
            s ->
                out.println(
                    "The fan line is left on"
                        + (Double.isNaN(s.bathC())
                            ? ", and the bath's temperature is not known"
                            : String.format(
                                Locale.ROOT, " and the bath stands at %.1f °C", s.bathC()))
                        + ": keep air moving until it is below "
                        + Range.plain(warmC)
                        + " °C and the room is cleared."));
  }

  static long wallClockS() {
    return Clock.systemUTC().instant().getEpochSecond();
  }
}
