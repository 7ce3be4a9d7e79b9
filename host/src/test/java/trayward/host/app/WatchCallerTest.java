package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import trayward.host.forecast.Features;
import trayward.host.forecast.Forecast;
import trayward.host.forecast.Forecast.Moment;
import trayward.host.forecast.Forecaster;
import trayward.host.forecast.Interval;
import trayward.host.link.Call;
import trayward.host.web.Outlook;

/** The call to watch comes once for each print and moment. */
class WatchCallerTest {

  private final List<Call> calls = new ArrayList<>();
  private final WatchCaller caller = new WatchCaller(calls::add);

  private static Optional<Outlook> outlook(Optional<Long> print, Forecast next) {
    return Optional.of(
        new Outlook(
            print,
            200,
            next,
            Optional.empty(),
            38,
            Features.NONE,
            Optional.empty(),
            Forecaster.of(List.of())));
  }

  private static Optional<Outlook> window(long print, Moment moment, boolean open) {
    Interval eighty = new Interval(190, 215, 245);
    Interval ninetyFive = new Interval(170, 215, 268);
    return outlook(
        Optional.of(print),
        new Forecast.Window(moment, 215, eighty, ninetyFive, 12, open, List.of()));
  }

  private int callsAfter(Optional<Outlook> outlook) {
    caller.follow(outlook);
    caller.follow(outlook);
    return calls.size();
  }

  @Test
  void itComesWhenTheWindowOpensOnceForEachPrintAndMoment() {
    assertEquals(0, callsAfter(window(3, Moment.EMERGENCE, false)));
    assertEquals(1, callsAfter(window(3, Moment.EMERGENCE, true)));
    assertEquals(1, callsAfter(window(3, Moment.PULL, false)));
    assertEquals(2, callsAfter(window(3, Moment.PULL, true)));
    assertEquals(2, callsAfter(Optional.empty()));
    assertEquals(3, callsAfter(window(4, Moment.EMERGENCE, true)));
    assertEquals(List.of(Call.WATCH_NOW, Call.WATCH_NOW, Call.WATCH_NOW), calls);
  }

  @Test
  void withoutAPrintOrAWindowNobodyIsCalled() {
    assertEquals(0, callsAfter(outlook(Optional.of(3L), new Forecast.Refused("no bath"))));
    Optional<Outlook> coming = window(3, Moment.EMERGENCE, true);
    assertEquals(0, callsAfter(outlook(Optional.empty(), coming.orElseThrow().next())));
  }
}
