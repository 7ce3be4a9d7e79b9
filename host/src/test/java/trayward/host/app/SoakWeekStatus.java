package trayward.host.app;

import java.util.List;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;
import trayward.controller.scan.Snapshot;
import trayward.host.link.LevelView;
import trayward.host.link.TrayKnownView;
import trayward.host.link.TrayStatus;
import trayward.host.link.UncertaintyView;

/** What a host hears of a snapshot, without what the recorder never reads. Stateless. */
final class SoakWeekStatus {

  private SoakWeekStatus() {}

  static TrayStatus of(Snapshot s) {
    return new TrayStatus(
        s.scan(),
        s.uptimeMs() / 1000.0,
        s.state().name(),
        s.stateMs() / 1000.0,
        s.remainingMs() / 1000.0,
        s.bath().validC(),
        s.secondBath().validC(),
        s.plate().validC(),
        s.bath().kind().name(),
        s.setC(),
        s.duty(),
        s.heaterOn(),
        s.safetyRelay(),
        s.fanCommanded(),
        s.fanProven(),
        s.fanRpm(),
        s.airflow(),
        s.firstOut().map(TripCause::name).orElse(""),
        List.of(),
        s.withheld().stream().map(WithheldReason::name).toList(),
        List.of(),
        s.presenceDueMs() / 1000.0,
        s.storeWritable(),
        s.wear().heaterClosings(),
        s.wear().safetyClosings(),
        new LevelView(
            s.level().level().name(),
            s.level().litres(),
            s.level().lowL(),
            s.level().highL(),
            s.level().addL()),
        new UncertaintyView(Double.NaN, Double.NaN, Double.NaN, true),
        new TrayKnownView("", Double.NaN, Double.NaN, null, 50, ""));
  }
}
