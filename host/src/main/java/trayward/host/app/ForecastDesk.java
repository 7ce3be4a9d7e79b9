package trayward.host.app;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Executor;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.host.bath.BathContents;
import trayward.host.forecast.Conditions;
import trayward.host.forecast.Features;
import trayward.host.forecast.Forecast;
import trayward.host.forecast.Forecaster;
import trayward.host.forecast.PastPrint;
import trayward.host.forecast.Watch;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.PrintBath;
import trayward.host.session.TraceSample;
import trayward.host.store.LogFailed;
import trayward.host.store.PastPrints;
import trayward.host.store.TrayLog;
import trayward.host.web.Outlook;

/**
 * Keeps the forecast: learns anew when a mark or a correction came, and watches the print in the
 * developer. {@link #follow} is called once a second by one thread; learning is done by another;
 * {@link #outlook} is asked from any.
 */
final class ForecastDesk {

  private static final Logger LOG = LoggerFactory.getLogger(ForecastDesk.class);

  /** With so many prints on one paper the others no longer help: as many as show a scatter. */
  private static final int OWN_PAPER_PRINTS = 3;

  /** The bath's contents move this slowly, follows. */
  private static final int CONTENTS_EVERY = 10;

  /**
   * What was learned.
   *
   * @param generation counts up with each learning
   * @param forecaster of these prints
   * @param paper their paper; empty for all
   * @param stops stops over of the newest print that told them
   */
  private record Learned(
      long generation, Forecaster forecaster, Optional<String> paper, OptionalDouble stops) {}

  private static final Learned NOTHING =
      new Learned(0, Forecaster.of(List.of()), Optional.empty(), OptionalDouble.empty());

  private final TrayLog log;
  private final PastPrints past;
  private final Executor learner;
  private volatile Learned learned = NOTHING;
  private volatile Optional<Outlook> outlook = Optional.empty();

  // Of the following thread alone.
  private List<Long> sign = List.of();
  private Learned watchedBy = NOTHING;
  private Optional<Watch> watch = Optional.empty();
  private long watched;
  private Features coming = Features.NONE;
  private int follows;

  ForecastDesk(TrayLog log, Executor learner) {
    this.log = log;
    this.past = log.pastPrints();
    this.learner = learner;
  }

  /** The forecast as it is now. */
  Optional<Outlook> outlook() {
    return outlook;
  }

  /**
   * A second later.
   *
   * @param sessionS time on the open session's line, seconds; NaN where none is open
   * @param bathC the bath, °C; NaN where not valid
   */
  void follow(double sessionS, double bathC) {
    Optional<Print> current = log.currentPrint();
    List<Long> now = past.sign();
    boolean changed = !now.equals(sign);
    if (changed) {
      sign = now;
      long before = current.map(Print::number).orElse(now.get(2) + 1);
      learner.execute(() -> learn(before));
    }
    if (changed || follows % CONTENTS_EVERY == 0) {
      coming = features(log.baths().now(), learned.stops());
    }
    follows++;
    outlook = Optional.of(current.isPresent() ? in(current.get(), sessionS, bathC) : next(bathC));
  }

  private void learn(long before) {
    try {
      Optional<String> paper = past.paperOf(before);
      List<PastPrint> own = paper.isPresent() ? past.before(before, paper) : List.of();
      boolean enough = own.size() >= OWN_PAPER_PRINTS;
      Forecaster forecaster = Forecaster.of(enough ? own : past.before(before, Optional.empty()));
      var unused = forecaster.sureness(); // so that no one who asks waits for it
      learned =
          new Learned(
              learned.generation() + 1,
              forecaster,
              enough ? paper : Optional.empty(),
              past.stopsOf(before));
    } catch (LogFailed e) {
      LOG.warn("the forecast stays as it was: {}", e.getMessage());
    }
  }

  private static Features features(Optional<BathContents> bath, OptionalDouble stops) {
    if (bath.isEmpty() || bath.get().litres().value() <= 0) {
      return new Features(
          OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), stops);
    }
    BathContents b = bath.get();
    return new Features(
        OptionalDouble.of(b.areaM2PerL()),
        OptionalDouble.of(b.bromideGPerL().value()),
        OptionalDouble.of(b.strength().value()),
        stops);
  }

  private Outlook next(double bathC) {
    watch = Optional.empty();
    watched = 0;
    Learned by = learned;
    Conditions conditions = new Conditions(bathC, coming);
    return new Outlook(
        Optional.empty(),
        0,
        Double.isNaN(bathC)
            ? new Forecast.Refused("no valid bath reading")
            : by.forecaster().emergence(conditions),
        Double.isNaN(bathC) ? Optional.empty() : Optional.of(by.forecaster().pull(conditions)),
        bathC,
        coming,
        by.paper(),
        by.forecaster());
  }

  private Outlook in(Print print, double sessionS, double bathC) {
    Learned by = learned;
    if (watch.isEmpty() || watched != print.number() || by.generation() != watchedBy.generation()) {
      watch = Optional.of(replayed(print, by));
      watched = print.number();
      watchedBy = by;
    }
    double elapsedS = Math.max(0, sessionS - print.inAt().map(Mark::sessionS).orElse(sessionS));
    OptionalDouble valid = Double.isNaN(bathC) ? OptionalDouble.empty() : OptionalDouble.of(bathC);
    Watch next = emerged(watch.orElseThrow().at(elapsedS, valid), print);
    watch = Optional.of(next);
    Optional<Forecast> pull =
        next.emerged().isEmpty() && !Double.isNaN(bathC)
            ? Optional.of(by.forecaster().pull(new Conditions(bathC, next.features())))
            : Optional.empty();
    return new Outlook(
        Optional.of(print.number()),
        elapsedS,
        next.now(),
        pull,
        bathC,
        next.features(),
        by.paper(),
        by.forecaster());
  }

  private static Watch emerged(Watch watch, Print print) {
    OptionalDouble atS = print.elapsedS(MarkKind.EMERGENCE);
    if (atS.isPresent()) {
      return watch.emerged().isPresent() ? watch : watch.emergedAt(atS.getAsDouble());
    }
    return watch.emerged().isPresent() ? watch.notEmerged() : watch;
  }

  /** The watch as it would be now, of what the log has of the print: a restart loses nothing. */
  private Watch replayed(Print print, Learned by) {
    Mark in = print.inAt().orElseThrow();
    Features features =
        log.baths().atPrint(print.number()).map(bath -> features(bath, by.stops())).orElse(coming);
    Watch watch =
        Watch.begun(by.forecaster(), new Conditions(in.bathC().orElse(Double.NaN), features));
    for (TraceSample sample : log.traceOf(print)) {
      OptionalDouble valid =
          sample.bathValid() ? OptionalDouble.of(sample.bathC()) : OptionalDouble.empty();
      watch = emerged(watch.at(sample.sessionS() - in.sessionS(), valid), print);
    }
    return watch;
  }

  private static Features features(PrintBath bath, OptionalDouble stops) {
    return new Features(
        OptionalDouble.of(bath.areaM2PerL()),
        OptionalDouble.of(bath.bromideGPerL()),
        OptionalDouble.of(bath.strength()),
        stops);
  }
}
