package trayward.controller.scan;

import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;
import trayward.controller.quantity.Range;
import trayward.controller.safety.Level;
import trayward.controller.safety.LevelEstimate;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Limits;
import trayward.controller.safety.Refusal;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;
import trayward.controller.safety.Verdict;

/** Turns what a scan decided into events, each told once. Scan thread only. */
final class Reporter {

  private final EventBox events;
  private final Limits limits;
  private final AlarmSteps alarms;
  private Set<WithheldReason> withheldBefore = Set.of();
  private boolean presenceSoonBefore;
  private Level levelBefore = Level.WELL;

  Reporter(EventBox events, Limits limits) {
    this.events = events;
    this.limits = limits;
    this.alarms = new AlarmSteps(limits.ms(Limit.WARNING_CLEAR_S));
  }

  void report(
      long nowNanos,
      State before,
      Verdict verdict,
      Set<Request> requests,
      boolean pedal,
      boolean pedalLong,
      Function<TripCause, String> detail) {
    if (!requests.isEmpty()) {
      answered(nowNanos, verdict, requests);
    }
    for (TripCause cause : verdict.tripped()) {
      put(nowNanos, EventKind.TRIP, cause.name(), detail.apply(cause));
    }
    State now = verdict.next().state();
    if (now != before) {
      put(nowNanos, EventKind.STATE, now.name(), before.name());
    }
    if (pedal) {
      put(nowNanos, EventKind.PEDAL, "pressed", "");
    }
    if (pedalLong) {
      put(nowNanos, EventKind.PEDAL, "LONG", "kept down");
    }
    alarms
        .next(
            nowNanos,
            verdict.alarms(),
            trip -> verdict.tripped().contains(trip) ? detail.apply(trip) : "")
        .forEach(events::put);
    withheld(nowNanos, verdict);
    presence(nowNanos, verdict);
  }

  private void answered(long nowNanos, Verdict verdict, Set<Request> requests) {
    for (Request request : requests) {
      Refusal refusal = verdict.refused().get(request);
      if (refusal != null) {
        put(nowNanos, EventKind.REFUSED, request.name(), refusal.words());
      } else if (request != Request.PRESENCE) {
        put(nowNanos, EventKind.DONE, request.name(), "");
      }
    }
  }

  /** What a person said of the liquid (SR-28). */
  void told(long nowNanos, LevelTold told) {
    if (told instanceof LevelTold.Poured poured) {
      put(nowNanos, EventKind.DONE, "TOP_UP", Range.plain(poured.litres()) + " L");
    } else {
      String litres = told instanceof LevelTold.Holds holds ? Range.plain(holds.litres()) : "";
      String detail = litres.isEmpty() ? "as said" : litres + " L";
      put(nowNanos, EventKind.DONE, "CONFIRM_LEVEL", detail);
    }
  }

  /** What the level has become, with the water that is missing. */
  void level(long nowNanos, LevelEstimate now) {
    if (now.level() != levelBefore) {
      levelBefore = now.level();
      String add = String.format(Locale.ROOT, "about %.2f L of water to add", now.addL());
      put(nowNanos, EventKind.LEVEL, now.level().name(), now.level() == Level.WELL ? "" : add);
    }
  }

  private void withheld(long nowNanos, Verdict verdict) {
    Set<WithheldReason> reasons = Publisher.withheld(verdict);
    if (reasons.equals(withheldBefore)) {
      return;
    }
    withheldBefore = reasons;
    if (verdict.next().state().purged() && !reasons.isEmpty()) {
      String names = reasons.stream().map(Enum::name).collect(Collectors.joining(" "));
      put(nowNanos, EventKind.WITHHELD, names, "");
    }
  }

  private void presence(long nowNanos, Verdict verdict) {
    int dueMs = Publisher.presenceDueMs(verdict, limits);
    boolean soon = verdict.next().state().inRun() && dueMs <= limits.ms(Limit.PRESENCE_WARN_MIN);
    if (soon && !presenceSoonBefore) {
      put(nowNanos, EventKind.PRESENCE_SOON, Integer.toString(dueMs / 60_000), "");
    }
    presenceSoonBefore = soon;
  }

  private void put(long nowNanos, EventKind kind, String subject, String detail) {
    events.put(new TrayEvent(nowNanos, kind, subject, detail));
  }
}
