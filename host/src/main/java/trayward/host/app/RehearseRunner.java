package trayward.host.app;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;
import trayward.controller.app.LearnedToml;
import trayward.controller.app.Rehearsal;
import trayward.controller.app.RehearsalRow;
import trayward.controller.app.Scenario;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.event.TripCause;
import trayward.controller.scan.Snapshot;
import trayward.host.report.EventsJsonl;
import trayward.host.report.ResultJson;
import trayward.host.report.ResultMeter;
import trayward.host.report.TraceCsv;
import trayward.host.report.TraceRow;
import trayward.host.report.Turn;

/** Runs a rehearsal into its files. One thread. */
final class RehearseRunner {

  /** Rows between two moves of the progress bar: a minute of plant time. */
  private static final int ROWS_PER_MOVE = 600;

  private final PrintStream err;

  RehearseRunner(PrintStream err) {
    this.err = err;
  }

  /** Runs {@code scenario} into {@code out}; the folder is made where it is not there. */
  ResultMeter run(Scenario scenario, Path out) throws IOException {
    Files.createDirectories(out);
    long began = System.nanoTime();
    ResultMeter meter = new ResultMeter(scenario.durationS());
    List<ResultJson.Trip> trips = new ArrayList<>();
    double[] evaporatedMl = {0};
    Rehearsal rehearsal;
    try (TraceCsv trace = new TraceCsv(out.resolve("trace.csv"));
        EventsJsonl events = new EventsJsonl(out.resolve("events.jsonl"));
        ProgressBar bar = bar(scenario)) {
      rehearsal =
          new Rehearsal(
              scenario,
              new Rehearsal.Listener() {
                private long rows;

                @Override
                public void row(RehearsalRow row) {
                  TraceRow traced = traceRow(row);
                  meter.row(traced);
                  trace.row(traced);
                  evaporatedMl[0] = row.evaporatedMl();
                  if (++rows % ROWS_PER_MOVE == 0) {
                    bar.stepBy(ROWS_PER_MOVE / 10);
                  }
                }

                @Override
                public void event(double tS, TrayEvent event) {
                  if (event.kind() == EventKind.TRIP) {
                    trips.add(new ResultJson.Trip(event.subject(), tS));
                  }
                  events.event(tS, event.kind().name(), event.subject(), event.detail());
                }

                @Override
                public void turn(double tS, String word, boolean lowered, OptionalDouble bound) {
                  meter.turn(new Turn(tS, word, lowered, bound));
                }
              });
      rehearsal.run();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    Path learned = out.resolve(LearnedToml.FILE);
    Files.deleteIfExists(learned); // an earlier rehearsal's would speak of another tray
    if (rehearsal.learned().isPresent()) {
      Files.writeString(learned, LearnedToml.write(rehearsal.learned().get()));
    }
    ResultJson.write(
        out.resolve("result.json"),
        meter,
        new ResultJson.Totals(
            trips,
            rehearsal.energyJ() / 3600,
            evaporatedMl[0],
            rehearsal.relayOperations(),
            (System.nanoTime() - began) / 1e9,
            scenario.durationS()));
    return meter;
  }

  private ProgressBar bar(Scenario scenario) {
    return new ProgressBarBuilder()
        .setTaskName(scenario.name().length() > 24 ? "rehearsal" : scenario.name())
        .setInitialMax(Math.round(scenario.durationS()))
        .setUnit(" s of plant time", 1)
        .setStyle(ProgressBarStyle.ASCII)
        .setConsumer(new me.tongfei.progressbar.ConsoleProgressBarConsumer(err, 78))
        .build();
  }

  private static TraceRow traceRow(RehearsalRow r) {
    Snapshot s = r.snapshot();
    return new TraceRow(
        r.tS(),
        r.bathTrueC(),
        r.plateTrueC(),
        s == null ? Double.NaN : s.bath().validC(),
        s == null ? Double.NaN : s.secondBath().validC(),
        s == null ? Double.NaN : s.plate().validC(),
        r.setC(),
        s == null ? 0 : s.duty(),
        s != null && s.heaterOn(),
        r.heaterContact(),
        r.safetyContact(),
        r.watchdogLine(),
        r.heatW(),
        s != null && s.fanCommanded(),
        r.fanRpm(),
        r.flowTrueM3PerH(),
        r.airflowTrue(),
        s != null && s.fanProven(),
        r.state(),
        firstOut(s),
        r.liquidL(),
        r.evaporatedMl(),
        s != null && s.permitted());
  }

  private static String firstOut(@Nullable Snapshot s) {
    return s == null ? "" : s.firstOut().map(TripCause::name).orElse("");
  }

  /** One line for the person. */
  static String summary(ResultMeter meter, Path out) {
    return String.format(
        Locale.ROOT,
        "heat-up %s s, overshoot %s K, ripple %.3f K; written to %s",
        words(meter.heatUpS(), "%.1f"),
        words(meter.overshootK(), "%.2f"),
        meter.ripplePpK(),
        out);
  }

  private static String words(OptionalDouble value, String format) {
    return value.isPresent() ? String.format(Locale.ROOT, format, value.getAsDouble()) : "-";
  }
}
